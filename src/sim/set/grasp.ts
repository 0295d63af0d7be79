export function beginGrasp(..._a: unknown[]): void {}
export function endGrasp(..._a: unknown[]): void {}
export function holdPlunger(..._a: unknown[]): void {}
