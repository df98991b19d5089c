import { z } from 'zod';
import { evidenceGrades, type EvidenceNote } from '../core/statements/index.ts';
import { AppError } from '../errors.ts';
import { noteFaults } from '../messages/own-note.ts';

const word = z.string().trim().toLowerCase().min(2).max(60);
const note = z.object({
  about: z.array(z.array(word).min(1).max(20)).min(1).max(4),
  statement: z.string().trim().min(3).max(300), grade: z.enum(evidenceGrades), finding: z.string().trim().min(3).max(1000), citation: z.string().trim().min(3).max(300),
  doi: z.string().trim().regex(/^10\.\S+$/).nullable().default(null), population: z.string().trim().max(300).default(''),
  dose: z.string().trim().max(300).nullable().default(null), doseG: z.number().positive().max(10_000).nullable().default(null), doseFood: z.array(z.string().trim().toLowerCase().min(1).max(60)).max(10).default([]),
});

/** Reads an evidence note of hers; throws `bad-input` that tells each field that is off and how to mend it. */
export async function readNote(request: Request): Promise<Omit<EvidenceNote, 'id' | 'checked'>> {
  const read = note.safeParse(await request.json().catch(() => null));
  if (!read.success) throw new AppError('bad-input', { what: noteFaults(read.error.issues.map((issue) => String(issue.path[0] ?? ''))) });
  return read.data;
}
