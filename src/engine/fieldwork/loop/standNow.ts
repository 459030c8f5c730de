import { tol } from '../../../mechanics/tolerances'
import { millimetresPer, toFine } from '../../../mechanics/units'
import type {
  CouplingDocument,
  FootDocument,
  MachineDocument,
  ReadingSetDocument,
  RestraintDocument,
  SkidDocument,
  SurveyDocument,
  TrainDocument,
} from '../../../document/schema'
import type { Body, Train } from '../../../mechanics/train'
import { footFieldList } from '../../../document/footFields'
import { hotChecksUnused } from '../../../document/edits/hotCheckEdits'
import { valueAt, withValue } from '../../../document/place'
import { workRecordOf } from '../../../document/work'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { couplingMotions } from '../../../mechanics/misalignment/couplingMotion'
import { tidy } from '../../../language/tidy'
import { listed } from '../../../language/names'
import { pointMove } from '../steps/limits'
import { largestMove } from '../steps/moves'
import { actualMotion, footMoves, type Actual, type FootMove } from './actual'
import { lineOf, type NewReadings } from './compare'
import type { Signed } from './pages'

export interface Round {
  /** Everything done since the readings in the document. */
  readonly actuals: readonly Actual[]
  /** New readings, by the sets of the document that were read again. */
  readonly readings: readonly NewReadings[]
  /** Gaps between shaft ends measured again, in the document's length unit, by coupling. */
  readonly gaps?: Readonly<Record<string, number>>
  /** Bodies whose soft feet were shimmed: their gaps have to be read anew. */
  readonly softDone?: readonly string[]
  /** True for readings repeated with nothing moved: those before them stay in use and all count together. */
  readonly repeated?: boolean
  readonly sign: Signed
  /** What the readings came after, such as "step 3". */
  readonly after: string
}

export type Stood =
  | { readonly ok: true; readonly document: TrainDocument }
  /** Couplings that moved and were not read again. */
  | { readonly ok: false; readonly unread: readonly string[]; readonly why: string }

/**
 * The document of the train as it now stands, to be planned again: packs as they now are, hole
 * centres moved by the actual slides, lifts and flanges less what was used of them, new readings in
 * place of the old ones, which stay in it unused. What is held stays held; work done and the order
 * chosen belong to the round that is over and leave the record, its pages stay.
 * A tilt limit only says how far either way, so what was pitched counts against both ways.
 */
export function standNow(document: TrainDocument, train: Train, round: Round): Stood {
  const motions = train.bodies.map((body) => actualMotion(train, body, round.actuals))
  const unread = unreadCouplings(train, motions, round)
  if (unread.length > 0)
    return {
      ok: false,
      unread,
      why: `A machine at ${listed(unread.map((id) => train.couplings.find((c) => c.id === id)?.name ?? id))} was moved since it was read: read it again, whole, before planning from here.`,
    }
  const stand = <T extends MachineDocument | SkidDocument>(body: T): T => {
    const b = train.bodies.findIndex(({ id }) => id === body.id)
    const of = train.bodies[b]
    return of ? bodyNow(train, of, b, body, motions, round) : body
  }
  const gaps = couplingMotions(train, motions).map(({ gap }) => gap)
  const record = workRecordOf(document.record)
  const kept = record && { ...record }
  delete kept?.work
  delete kept?.order
  return {
    ok: true,
    document: {
      ...document,
      machines: document.machines.map(stand),
      ...(document.skids && { skids: document.skids.map(stand) }),
      couplings: document.couplings.map((coupling, c) =>
        couplingNow(train, coupling, gaps[c] ?? 0, round),
      ),
      ...(document.surveys && { surveys: surveysNow(document.surveys, train, motions, round) }),
      ...(anyMoved(train, motions, round) &&
        hotChecksUnused(document, `hot check before ${round.after}`)),
      ...(kept && { record: kept }),
    },
  }
}

/** Couplings at a machine that was moved, by itself or by its skid, whose new readings do not fix their line. */
function unreadCouplings(
  train: Train,
  motions: readonly Motion[],
  { readings, softDone = [] }: Round,
): string[] {
  const movedBy = (b: number) => {
    const body = train.bodies[b]
    if (!body) return false
    return softDone.includes(body.id) || largestMove(body, motions[b] ?? noMotion) > tol.unseen
  }
  const moved = (m: number) => movedBy(m) || movedBy(train.bodies[m]?.skid ?? m)
  return train.couplings.flatMap((coupling) => {
    if (!moved(coupling.left) && !moved(coupling.right)) return []
    const some = readings.filter((entry) => entry.coupling === coupling.id)
    return lineOf(train, coupling, some) ? [] : [coupling.id]
  })
}

function bodyNow<T extends MachineDocument | SkidDocument>(
  train: Train,
  body: Body,
  b: number,
  document: T,
  motions: readonly Motion[],
  round: Round,
): T {
  const moves = footMoves(train, body, round.actuals)
  const motion = motions[b] ?? noMotion
  const soft = round.softDone?.includes(body.id) === true
  // a hole was reamed through a body and what it stands on: once the body has moved on that, the hole fits no more
  const moved = soft || largestMove(body, motion) > tol.unseen
  const pitch = motion.sz + (body.skid === undefined ? 0 : (motions[body.skid] ?? noMotion).sz)
  return {
    ...document,
    feet: document.feet.map((foot, f) => {
      const at = body.feet[f]
      if (!at) return foot
      const own = moves[f] ?? { shim: 0, side: 0, axial: 0 }
      // Feet turn with their body: what a yaw carries them along the train is no entry of anybody's.
      const axial = motion.tx - motion.sy * at.y
      const side = motion.ty + motion.sy * (at.x - body.x0)
      return footNow(train, foot, { shim: own.shim, side, axial }, soft)
    }),
    ...(document.restraints && {
      restraints: document.restraints.map((restraint, i) => {
        const point = body.restraints[i]
        return point
          ? restraintNow(train, restraint, pointMove(train, motions, b, point))
          : restraint
      }),
    }),
    ...(document.pins && {
      pins: document.pins.map((one) =>
        moved && one.now !== 'ream' ? { ...one, now: 'ream' } : one,
      ),
    }),
    ...('stator' in document &&
      document.stator &&
      moved && {
        stator: { ...document.stator, use: false, why: `measured before ${round.after}` },
      }),
    ...(document.tilt !== undefined && {
      tilt: tidy(Math.max(0, document.tilt - Math.abs(pitch))),
    }),
    ...(document.level !== undefined && { level: tidy(document.level + pitch) }),
  }
}

/** A foot after its moves (um), each of its figures as the table of foot fields says. */
function footNow(train: Train, foot: FootDocument, moved: FootMove, soft: boolean): FootDocument {
  return footFieldList.reduce((now, { path, work }) => {
    if (work === 'nothing') return now
    if (work === 'read anew') return soft ? withValue(now, path, undefined) : now
    if (work === 'lost with a shim')
      return tidy(toFine(moved.shim, train.units)) === 0 ? now : withValue(now, path, undefined)
    const { goesWith, times, least = -Infinity, from } = work
    const grouped = valueAt(foot, path.slice(0, 1)) !== undefined
    const before = valueAt(foot, path) ?? (grouped ? from : undefined)
    if (typeof before !== 'number') return now
    const by = times * tidy(toFine(moved[goesWith], train.units))
    return withValue(now, path, Math.max(least, tidy(before + by)))
  }, foot)
}

/** What is left of a flange's room; where it was overdrawn the flange may stay, no further. */
function restraintNow(
  train: Train,
  restraint: RestraintDocument,
  moved: { axial: number; side: number; rise: number },
): RestraintDocument {
  const left = (range: [number, number] | undefined, by: number): [number, number] | undefined =>
    range && [
      Math.min(0, tidy(range[0] - toFine(by, train.units))),
      Math.max(0, tidy(range[1] - toFine(by, train.units))),
    ]
  const axial = left(restraint.axial, moved.axial)
  const side = left(restraint.side, moved.side)
  const rise = left(restraint.rise, moved.rise)
  return {
    ...restraint,
    ...(axial && { axial }),
    ...(side && { side }),
    ...(rise && { rise }),
  }
}

const anyMoved = (
  train: Train,
  motions: readonly Motion[],
  { softDone = [] }: Pick<Round, 'softDone'>,
): boolean =>
  train.bodies.some(
    (body, b) =>
      softDone.includes(body.id) || largestMove(body, motions[b] ?? noMotion) > tol.unseen,
  )

/** A survey tells where axes lay before anything was moved: it stays in the file unused. */
function surveysNow(
  surveys: readonly SurveyDocument[],
  train: Train,
  motions: readonly Motion[],
  round: Round,
): SurveyDocument[] {
  const moved = anyMoved(train, motions, round)
  const { after } = round
  return surveys.map((survey) =>
    moved && survey.use !== false
      ? { ...survey, use: false, why: `surveyed before ${after}` }
      : survey,
  )
}

function couplingNow(
  train: Train,
  coupling: CouplingDocument,
  gap: number,
  { readings, gaps, repeated = false, sign, after }: Round,
): CouplingDocument {
  const fresh = readings.filter((entry) => entry.coupling === coupling.id)
  const measured = gaps?.[coupling.id]
  const axial = coupling.axial && {
    ...coupling.axial,
    found: measured ?? tidy(coupling.axial.found + gap / 1000 / millimetresPer[train.units.length]),
  }
  return {
    ...coupling,
    ...(axial && { axial }),
    found:
      fresh.length === 0
        ? coupling.found
        : [
            ...coupling.found.map((set): ReadingSetDocument =>
              repeated || set.use === false
                ? set
                : { ...set, use: false, why: `read before ${after}` },
            ),
            ...fresh.flatMap((entry) => freshSet(coupling.found[entry.set], entry, sign)),
          ],
  }
}

/** A set like the old one, with what was read now. */
function freshSet(
  set: ReadingSetDocument | undefined,
  entry: NewReadings,
  { when, by }: Signed,
): ReadingSetDocument[] {
  if (!set) return []
  const signed = { use: true, when, ...(by !== undefined && { by }) }
  const plain = { ...set }
  delete plain.why
  if (plain.kind === 'line')
    return 'offset' in entry
      ? [{ ...plain, ...signed, offset: { ...entry.offset }, slope: { ...entry.slope } }]
      : []
  return 'readings' in entry
    ? [{ ...plain, ...signed, readings: entry.readings.map(([hour, value]) => [hour, value]) }]
    : []
}
