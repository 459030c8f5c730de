import type { Server } from 'node:http'

export const contentPolicy: string
export function fileServer(folder: string): Server
export function listen(server: Server, port: number, strict: boolean): Promise<string>
export function portWanted(): { port: number; strict: boolean }
export function serveUntilStopped(folder: string, say: (address: string) => void): Promise<void>
