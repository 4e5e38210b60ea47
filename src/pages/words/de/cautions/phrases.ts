/** What several cautions say alike. */
export const ringNow = 'Rufen Sie sofort den Tierarzt'
export const beforeWork = 'Rufen Sie den Tierarzt, bevor jemand daran arbeitet'
export const tell = 'Sagen Sie es dem Tierarzt'
export const tellToday = 'Sagen Sie es heute noch dem Tierarzt'
/** Where the sentence before said a sign, and not what it is. */
export const maybeLaminitis = 'Das kann ein Zeichen von Hufrehe sein'
