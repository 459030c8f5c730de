import { inject, provide, ref, type InjectionKey, type Ref } from 'vue'

/** What the cell one is in says of its value, in words; shown once a table, under it. */
const key: InjectionKey<Ref<string>> = Symbol('what the cell says')

export function provideSpeaking(): Ref<string> {
  const said = ref('')
  provide(key, said)
  return said
}

export const useSpeaking = (): Ref<string> => inject(key, () => ref(''), true)
