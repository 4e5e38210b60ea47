// In a browser stands for Node's file system, which gray-matter asks for and uses only to read a file by its name.
export default {}
