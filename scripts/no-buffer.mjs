// In a browser stands for Node's Buffer, of which gray-matter uses this one function.
const encoder = new TextEncoder()
export const Buffer = { from: (text) => encoder.encode(text) }
