/** Bundles a TypeScript program of ours and imports it. @returns the module's exports. */
export function importTypeScript(file: string): Promise<Record<string, unknown>>;
