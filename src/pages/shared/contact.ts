/** Whom to ring. */
import type { Contact, Horse, Practice } from '../../casebook/model.ts'

/** The horse's own vet where horse.md names one, else the practice's; null where there is no number. */
export function vetContact({ vet }: Horse, { contacts }: Practice): Contact | null {
  const own = vet.name !== null || vet.phone !== null
  const { name, phone } = own ? vet : contacts.vet
  return phone === null ? null : { name, phone }
}

export const contactText = ({ name, phone }: Contact): string =>
  [name, phone].filter((part) => part !== null).join(', ')
