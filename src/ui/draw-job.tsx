export async function drawJob(): Promise<boolean> { return false }
