export type LengthUnit = 'mm' | 'cm' | 'in'
