// Gives a file that pycore made to the reader.

/**
 * Save the bytes of a reply under the name that it has.
 * @param {{ blob: BlobPart | null, type: string, filename: string }} reply
 */
export function download(reply) {
  const address = URL.createObjectURL(new Blob(reply.blob ? [reply.blob] : [], { type: reply.type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = reply.filename;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
