import { z } from 'zod'
import { micrometresPer } from '../mechanics/units'
import * as quantities from './quantities'
import { hour, open, plain, sizes } from './quantities'

/**
 * What is written down around the plan: pipe strain of a coupling, and the record of the work. Both
 * are open in the train file, so that one that is not understood is kept as it is and never refused.
 */

const text = z.string().max(100_000)
/** No part that holds an absurd size is understood; um and mrad have the largest numbers of all units. */
const fine = quantities.fine.min(-sizes.fine.most.value).max(sizes.fine.most.value)
const slope = quantities.slope.min(-sizes.slope.most.value).max(sizes.slope.most.value)
/** A date and time as people and programs read it, ISO 8601. */
const when = z.string().max(40)

/** Coupling movement as flanges are made up, in the document's fine unit. */
export const pipeStrain = z.object({
  limit: fine.min(sizes.fine.least.value / micrometresPer.mm).optional(),
  basis: text.optional(),
  flanges: z.array(
    z.object({
      name: text,
      y: fine.optional(),
      z: fine.optional(),
      when: when.optional(),
      by: text.optional(),
    }),
  ),
})
export type PipeStrainDocument = z.infer<typeof pipeStrain>

/** What somebody decided to go without. */
const waiver = z.object({
  what: z.enum(['soft foot', 'pipe strain', 'signs', 'closure']),
  /** Id of the body or coupling; all of them where it is missing. */
  where: text.optional(),
  by: text,
  why: text,
  when: when.optional(),
})
export type Waiver = z.infer<typeof waiver>

/** Somebody read what the readings of a coupling mean and agreed; `says` is what was read then. */
const signCheck = z.object({
  coupling: text,
  says: text,
  by: text.optional(),
  when: when.optional(),
})

/** Somebody said of a value that looks like a slip that it is right; it holds while that value stands there. */
const sureOf = z.object({
  at: text,
  /** In the units of the document, as at its place. */
  value: plain,
})

/** One thing done at the machine, with what came of it. */
const workDone = z.object({
  step: text,
  body: text,
  foot: text.optional(),
  shim: fine.optional(),
  side: fine.optional(),
  axial: fine.optional(),
  /** What the dial at the foot showed last. */
  dial: fine.optional(),
  /** What dials showed at its stop point that watch what is not moved, by where they stand. */
  stays: z.array(z.object({ where: text, shows: fine })).optional(),
  done: z.boolean(),
  note: text.optional(),
  photos: z.array(text).optional(),
  by: text.optional(),
  when: when.optional(),
})
export type WorkDone = z.infer<typeof workDone>

/** What a set of readings shows when it is read again; a value may still be missing. */
const repeatReadings = z.object({
  coupling: text,
  /** Index in the coupling's `found`. */
  set: plain.int().nonnegative(),
  /** Id of the step at whose stop point it was read, beside the machine; none: read when the work was over. */
  step: text.optional(),
  readings: z.array(z.tuple([hour, fine.optional()])).optional(),
  offset: z.object({ y: fine.optional(), z: fine.optional() }).optional(),
  slope: z.object({ y: slope.optional(), z: slope.optional() }).optional(),
})
export type ReadAgain = z.infer<typeof repeatReadings>

/** A page of the record: written once; `seal` is worked out from everything in it and the page before. */
const recordPage = z.object({
  kind: z.enum(['as found', 'step', 'as left', 'nothing moved', 'note']),
  when,
  by: text.optional(),
  words: text,
  content: z.unknown(),
  seal: text,
})
export type RecordPage = z.infer<typeof recordPage>

/** What a record wants besides readings and work, in words: on whose order, with what, in what state, who stands for it. */
const recordFacts = z.object({
  workOrder: text.optional(),
  tag: text.optional(),
  torque: text.optional(),
  runOut: text.optional(),
  gaps: text.optional(),
  dials: text.optional(),
  bracket: text.optional(),
  micrometers: text.optional(),
  temperatures: text.optional(),
  dowels: text.optional(),
  guards: text.optional(),
  readBy: text.optional(),
  checkedBy: text.optional(),
  acceptedBy: text.optional(),
  /** Why it is accepted although something is missing, waived or over. */
  acceptance: text.optional(),
})
export type RecordFacts = z.infer<typeof recordFacts>

export const workRecord = z.object({
  facts: open(recordFacts).optional(),
  signs: z.array(signCheck).optional(),
  waivers: z.array(waiver).optional(),
  sure: z.array(sureOf).optional(),
  /** Ids of steps in the order somebody chose. */
  order: z.array(text).optional(),
  work: z.array(workDone).optional(),
  /** Readings being taken after the work so far. */
  again: z.array(repeatReadings).optional(),
  pages: z.array(recordPage).optional(),
})
export type WorkRecord = z.infer<typeof workRecord>

/** The record of a train file as far as it is understood; undefined where there is none or it is not. */
export const workRecordOf = (record: unknown): WorkRecord | undefined =>
  workRecord.safeParse(record).data

/** Facts of a record as far as they are understood. */
export const recordFactsOf = (facts: unknown): RecordFacts | undefined =>
  recordFacts.safeParse(facts).data

/** Pipe strain of a coupling as far as it is understood. */
export const pipeStrainOf = (strain: unknown): PipeStrainDocument | undefined =>
  pipeStrain.safeParse(strain).data
