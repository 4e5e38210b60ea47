/** Wording of the card that is printed to stand beside a foot. */
export const card = {
  title: 'Card for photographs of feet',
  how: [
    'Print at 100 %, in black, without "fit to page", on plain paper that does not shine.',
    'Hold a ruler to the check line: it is 100 mm long. If not, print again; or write into each entry of a photograph, under card, a width of 1.8 times what the line measures.',
    'Glue the card flat to a stiff board, such as a piece of plywood, and cut both along the outline. The long edge with the arrow stands on the ground.',
    'Stand it beside the foot, before the toe or behind the heel, on the same level ground, in one plane with the middle of the toe, upright, whole in the picture.',
    'A card that is bent, dirty, wet or shown on a screen is refused.',
  ],
  checkLine: 'check line: 100 mm',
  edge: 'this edge on the ground',
}
