import { shallowReadonly, shallowRef } from 'vue'

/** Why a part could not be fetched: a browser tells no difference between the two. */
const notReached = 'the app is not reached, or a newer version has taken its place'

/** What of the app comes after the first plan, since that can be read without it. */
const parts = new Set<Later<unknown>>()

/** A part of the app that is fetched by itself: when it is asked for, or when the first plan has been drawn. */
export class Later<Value> {
  private readonly have = shallowRef<Value>()
  private readonly missing = shallowRef('')
  private fetching: Promise<Value> | undefined
  private readonly fetch: () => Promise<Value>

  /** It, once it is there. */
  readonly value = shallowReadonly(this.have)
  /** Why it could not be fetched when it was asked for last; empty while it can be. */
  readonly fault = shallowReadonly(this.missing)

  constructor(fetch: () => Promise<Value>) {
    this.fetch = fetch
    parts.add(this)
  }

  /** Fetches it, once; what could not be fetched is fetched anew the next time. */
  get(): Promise<Value> {
    this.fetching ??= this.fetch().then(
      (value) => {
        this.missing.value = ''
        return (this.have.value = value)
      },
      (error: unknown) => {
        this.fetching = undefined
        this.missing.value = notReached
        throw new Error(notReached, { cause: error })
      },
    )
    return this.fetching
  }

  /** Waits for it while it is being fetched. */
  async underWay(): Promise<void> {
    await this.fetching
  }
}

/** Waits for what is being fetched just now, whether it comes or not. */
export async function partsUnderWay(): Promise<void> {
  await Promise.allSettled(Array.from(parts, (part) => part.underWay()))
}

/**
 * Fetches everything that is not there yet, so that nothing has to be waited for.
 * @returns why parts did not come; a page leaves that to whoever asks for one of them
 */
export async function fetchTheRest(): Promise<readonly unknown[]> {
  let asked: readonly PromiseSettledResult<unknown>[] = []
  for (let before = -1; before !== parts.size;) {
    before = parts.size
    asked = await Promise.allSettled(Array.from(parts, (part) => part.get()))
  }
  return asked.filter((one) => one.status === 'rejected').map((one): unknown => one.reason)
}
