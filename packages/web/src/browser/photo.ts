/** Photos made small where they are taken: a scout’s data plan and the outbox are both short of room. */

/** Longer side, in pixels. */
const LONGEST = 1600;
const QUALITY = 0.82;

/** A JPEG no larger than 1600 px, or null when the file is not a picture that this browser reads. */
export async function downscale(file: Blob): Promise<Blob | null> {
  const image = await createImageBitmap(file).catch(() => null);
  if (!image) return null;
  const scale = Math.min(1, LONGEST / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
}

/** Draws a photo into a canvas of its own proportions; the page's content policy allows no image from elsewhere. */
export async function drawInto(canvas: HTMLCanvasElement, photo: Blob): Promise<{ width: number; height: number } | null> {
  const image = await createImageBitmap(photo).catch(() => null);
  if (!image) return null;
  const { width, height } = image;
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')!.drawImage(image, 0, 0);
  image.close();
  return { width, height };
}
