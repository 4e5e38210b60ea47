// In a page that a passphrase opens, stands for the key pairs of age: elliptic curves and what withstands a quantum
// computer. Unlocking with a passphrase asks for none of them, and they are two thirds of the library's weight.
export const [MLKEM768P256, MLKEM768X25519, p256, x25519] = []
