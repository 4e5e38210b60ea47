export default function quantile(p: number, df: number): number
