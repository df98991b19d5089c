import type { Day } from '../calendar/index.ts';
import type { LifeStateKind } from '../people/index.ts';
import type { DateOrder } from './find-dates.ts';
import type { ReferralParameters } from './referral-parameters.ts';

export interface ReadRecordOptions {
  /** Her answer to "which comes first, day or month?"; null when not asked yet. */
  readonly order: DateOrder | null;
  readonly today: Day;
  readonly kinds: readonly LifeStateKind[];
  readonly questions: ReferralParameters['questions'];
}
