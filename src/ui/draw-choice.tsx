export async function drawChoice(_x: unknown): Promise<number | null> { return null }
