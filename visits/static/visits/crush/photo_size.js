/* Makes a picked picture small enough to keep and to send. Drawing it anew also leaves behind what the camera wrote
   beside it: the place, the time, the phone. */

const MOST_BYTES = 200_000;
const LONGEST_SIDE = 1600;
const QUALITIES = [0.82, 0.7, 0.58, 0.46];
const SMALLER = 0.8;
const SMALLEST_SIDE = 320;

/**
 * @param {Blob} file as picked or taken
 * @returns {Promise<Blob>} a JPEG of at most 200,000 bytes, the right way up. Rejects with a sentence for the trimmer.
 */
export async function smallPhoto(file) {
  const picture = await decoded(file);
  try {
    for (let side = LONGEST_SIDE; side >= SMALLEST_SIDE; side *= SMALLER) {
      const canvas = drawn(picture, side);
      for (const quality of QUALITIES) {
        const blob = await jpeg(canvas, quality);
        if (blob.size <= MOST_BYTES) return blob;
      }
    }
  } finally {
    picture.close();
  }
  throw new Error("This picture could not be made small enough to keep. Take it again.");
}

async function decoded(file) {
  try {
    return await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    throw new Error("This phone cannot read that picture. Take another one.");
  }
}

function drawn(picture, longest) {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext("2d");
  pen.imageSmoothingQuality = "high";
  // A see-through picture would come out black.
  pen.fillStyle = "#fff";
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

function jpeg(canvas, quality) {
  return new Promise((resolve, reject) => {
    const take = (blob) => (blob ? resolve(blob) : reject(new Error("The picture could not be kept. Take it again.")));
    canvas.toBlob(take, "image/jpeg", quality);
  });
}
