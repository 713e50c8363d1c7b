import { ApiError, errorIn } from './client.ts';

/**
 * Sends a file as it is, and tells how much of it is sent: 1 once all is. Only the older of the browser's two ways says so.
 * Rejects with an `ApiError`; stopped by the signal, nothing of it is kept.
 */
export function upload<T>(
  path: string,
  file: File,
  type: string,
  signal: AbortSignal,
  heard: (share: number) => void,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', path);
    request.setRequestHeader('content-type', type);
    request.setRequestHeader('accept', 'application/json');
    request.upload.addEventListener('progress', ({ loaded, total }) => heard(total === 0 ? 1 : loaded / total));
    request.addEventListener('load', () =>
      request.status < 300
        ? resolve(JSON.parse(request.responseText) as T)
        : reject(errorIn(request.status, request.responseText, null)),
    );
    const failed = () => reject(new ApiError('unreachable', path));
    request.addEventListener('error', failed);
    request.addEventListener('abort', failed);
    signal.addEventListener('abort', () => request.abort());
    request.send(file);
  });
}
