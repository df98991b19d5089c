import { readFileSync } from 'node:fs';
import type { CautionRule, EnergyFactor, ServingParameters } from '../../core/dish/index.ts';
import type { LifeStage, ReferenceIntake, ReferenceIntakes } from '../../core/people/index.ts';
import { compiledFile } from './folder.ts';

interface Parameter {
  value: number;
}

export interface ReferenceTables {
  readonly intakes: ReferenceIntakes;
  readonly energyFactors: readonly EnergyFactor[];
  readonly servings: ServingParameters;
  readonly cautions: readonly CautionRule[];
}

/** Reads life stages, reference intakes, energy factors and serving parameters and cautions from dist/tables/. */
export function readReferenceTables(): ReferenceTables {
  const raw = JSON.parse(readFileSync(compiledFile('reference.json'), 'utf8')) as {
    stages: LifeStage[];
    intakes: ReferenceIntake[];
    energy: { factors: EnergyFactor[] };
    servings: { portionEnergyKcal: Parameter; portionWeightG: Parameter };
    cautions: CautionRule[];
  };
  return {
    intakes: { stages: raw.stages, intakes: raw.intakes },
    energyFactors: raw.energy.factors,
    servings: { portionEnergyKcal: raw.servings.portionEnergyKcal.value, portionWeightG: raw.servings.portionWeightG.value },
    cautions: raw.cautions,
  };
}

export interface Source {
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly year: number | null;
  readonly licence: string;
  readonly attribution?: string;
  readonly from_memory?: boolean;
}

/** Reads the list of sources that data/ cites. */
export function readSources(): Source[] {
  return JSON.parse(readFileSync(compiledFile('sources.json'), 'utf8')) as Source[];
}
