import { defineStore } from 'pinia'
import { ref } from 'vue'

/** How many times the usual work each question about the job on the sheet may take: more where somebody asks to go on. */
export const useAllowance = defineStore('allowance', () => {
  const times = ref(1)

  return { times }
})
