// A photo is made small on the phone before it is kept: a picture of the field needs no more, and a weak signal carries no more.

const LONGEST_SIDE = 1600;
const QUALITY = 0.8;

/** The picture as JPEG of at most 1600 px, upright, without what the camera wrote beside it (place, time, device). */
export async function small(file) {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/jpeg", QUALITY));
}
