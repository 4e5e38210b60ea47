/** What several cautions say alike. */
export const ringNow = 'Rufen Sie sofort Ihren Tierarzt an'
export const beforeWork = 'Rufen Sie Ihren Tierarzt an, bevor jemand daran arbeitet'
export const tell = 'Sagen Sie es Ihrem Tierarzt'
export const tellToday = 'Sagen Sie es heute noch Ihrem Tierarzt'
/** Where the sentence before said a sign, and not what it is. */
export const maybeLaminitis = 'Das kann ein Zeichen von Hufrehe sein'
