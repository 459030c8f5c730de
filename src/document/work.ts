import * as z from 'zod/mini'
import { micrometresPer } from '../mechanics/units'
import * as quantities from './quantities'
import { hour, open, plain, sizes } from './quantities'

/**
 * What is written down around the plan: pipe strain of a coupling, and the record of the work. Both
 * are open in the train file, so that one that is not understood is kept as it is and never refused.
 */

const text = z.string().check(z.maxLength(100_000))
/** No part that holds an absurd size is understood; um and mrad have the largest numbers of all units. */
const fine = quantities.fine.check(z.gte(-sizes.fine.most.value), z.lte(sizes.fine.most.value))
const length = quantities.length.check(
  z.gte(-sizes.length.most.value),
  z.lte(sizes.length.most.value),
)
const slope = quantities.slope.check(z.gte(-sizes.slope.most.value), z.lte(sizes.slope.most.value))
/** A date and time as people and programs read it, ISO 8601. */
const when = z.string().check(z.maxLength(40))

/** Coupling movement as flanges are made up, in the document's fine unit. */
export const pipeStrain = z.object({
  limit: z.optional(fine.check(z.gte(sizes.fine.least.value / micrometresPer.mm))),
  basis: z.optional(text),
  flanges: z.array(
    z.object({
      name: text,
      y: z.optional(fine),
      z: z.optional(fine),
      when: z.optional(when),
      by: z.optional(text),
    }),
  ),
})
export type PipeStrainDocument = z.infer<typeof pipeStrain>

/** What somebody decided to go without. */
const waiver = z.object({
  what: z.enum(['soft foot', 'pipe strain', 'signs', 'closure', 'hot check']),
  /** Id of the body or coupling; all of them where it is missing. */
  where: z.optional(text),
  by: text,
  why: text,
  when: z.optional(when),
})
export type Waiver = z.infer<typeof waiver>

/** Somebody read what the readings of a coupling mean and agreed; `says` is what was read then. */
const signCheck = z.object({
  coupling: text,
  says: text,
  by: z.optional(text),
  when: z.optional(when),
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
  foot: z.optional(text),
  shim: z.optional(fine),
  side: z.optional(fine),
  axial: z.optional(fine),
  /** What the dial at the foot showed last. */
  dial: z.optional(fine),
  /** What dials showed at its stop point that watch what is not moved, by where they stand. */
  stays: z.optional(z.array(z.object({ where: text, shows: fine }))),
  done: z.boolean(),
  note: z.optional(text),
  photos: z.optional(z.array(text)),
  by: z.optional(text),
  when: z.optional(when),
})
export type WorkDone = z.infer<typeof workDone>

/** What a set of readings shows when it is read again; a value may still be missing. */
const repeatReadings = z.object({
  coupling: text,
  /** Index in the coupling's `found`. */
  set: plain.check(z.int(), z.nonnegative()),
  /** Id of the step at whose stop point it was read, beside the machine; none: read when the work was over. */
  step: z.optional(text),
  readings: z.optional(z.array(z.tuple([hour, z.optional(fine)]))),
  offset: z.optional(z.object({ y: z.optional(fine), z: z.optional(fine) })),
  slope: z.optional(z.object({ y: z.optional(slope), z: z.optional(slope) })),
})
export type ReadAgain = z.infer<typeof repeatReadings>

/** The gap between the shaft ends of a coupling, cold, as it was measured at the stop point of a step. */
const repeatGap = z.object({ coupling: text, step: text, gap: length })
export type GapAgain = z.infer<typeof repeatGap>

/** A page of the record: written once; `seal` is worked out from everything in it and the page before. */
const recordPage = z.object({
  kind: z.enum(['as found', 'step', 'as left', 'nothing moved', 'note']),
  when,
  by: z.optional(text),
  words: text,
  content: z.unknown(),
  seal: text,
})
export type RecordPage = z.infer<typeof recordPage>

/** What a record wants besides readings and work, in words: on whose order, with what, in what state, who stands for it. */
const recordFacts = z.object({
  workOrder: z.optional(text),
  tag: z.optional(text),
  torque: z.optional(text),
  runOut: z.optional(text),
  gaps: z.optional(text),
  dials: z.optional(text),
  bracket: z.optional(text),
  micrometers: z.optional(text),
  temperatures: z.optional(text),
  dowels: z.optional(text),
  guards: z.optional(text),
  readBy: z.optional(text),
  checkedBy: z.optional(text),
  acceptedBy: z.optional(text),
  /** Why it is accepted although something is missing, waived or over. */
  acceptance: z.optional(text),
})
export type RecordFacts = z.infer<typeof recordFacts>

export const workRecord = z.object({
  facts: z.optional(open(recordFacts)),
  signs: z.optional(z.array(signCheck)),
  waivers: z.optional(z.array(waiver)),
  sure: z.optional(z.array(sureOf)),
  /** Ids of steps in the order somebody chose. */
  order: z.optional(z.array(text)),
  work: z.optional(z.array(workDone)),
  /** Readings being taken after the work so far. */
  again: z.optional(z.array(repeatReadings)),
  /** Gaps between shaft ends that were measured with them. */
  gaps: z.optional(z.array(repeatGap)),
  pages: z.optional(z.array(recordPage)),
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
