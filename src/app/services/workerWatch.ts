/**
 * A worker that has given no sign of life for so long (ms) is silent: it is said within 5 s. Each new
 * start is given twice the time of the one before: on a slow line loading takes longer.
 */
const patience = 4500

/** Why a worker is lost that breaks without a message. */
export const notLoaded = 'its program could not be loaded'

/**
 * Notices that a worker is gone or silent. A long computation is not silence: a worker that computes
 * can say nothing until it is done, and the engine has limits of its own for that. Silent is a worker
 * - that has not loaded itself and its solver in time after its start, or
 * - that has loaded, has nothing else to do, and does not say in time that it has begun what it was sent.
 * One that ends in the middle of a computation is noticed by the lock that it holds as long as it
 * lives: the browser lets go of it. Where there are no locks, the next question finds it silent.
 */
export class WorkerWatch {
  private timer: ReturnType<typeof setTimeout> | undefined
  private loaded = false
  /** A question was sent, and the worker has not said yet that it has begun. */
  private asked = false
  private over = false
  private readonly lost: (why: string) => void

  /**
   * @param lost is told once, why, if the worker is no more; never after `end`
   * @param tries starts before this one that came to nothing
   */
  constructor(lost: (why: string) => void, tries: number) {
    this.lost = lost
    this.expect('it does not start', patience * 2 ** tries)
  }

  sent(): void {
    this.asked = true
    if (this.loaded) this.expectBegun()
  }

  ready(): void {
    this.loaded = true
    clearTimeout(this.timer)
    if (this.asked) this.expectBegun()
  }

  /** The worker has begun, or answered. */
  begun(): void {
    this.asked = false
    if (this.loaded) clearTimeout(this.timer)
  }

  /** The worker holds this lock as long as it lives. */
  holds(lock: string): void {
    void navigator.locks.request(lock, () => {
      this.lose('it ended by itself')
    })
  }

  lose(why: string): void {
    if (this.over) return
    this.end()
    this.lost(why)
  }

  end(): void {
    this.over = true
    clearTimeout(this.timer)
  }

  private expectBegun(): void {
    this.expect('it does not answer', patience)
  }

  private expect(why: string, within: number): void {
    clearTimeout(this.timer)
    this.timer = setTimeout(() => {
      this.lose(why)
    }, within)
  }
}
