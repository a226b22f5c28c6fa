import { createRequire } from 'node:module';
import type opencv from '@techstark/opencv-js';

/**
 * OpenCV compiled to WebAssembly; ready when its runtime says so. Required, and handed on inside an object: the module
 * itself is a thenable that never settles, so nothing may import or await it.
 */
export const cvReady = async (): Promise<{ cv: typeof opencv }> => {
  const cv = createRequire(import.meta.url)('@techstark/opencv-js') as typeof opencv;
  if (typeof cv.Mat !== 'function') {
    await new Promise<void>((resolve) => {
      (cv as unknown as { onRuntimeInitialized: () => void }).onRuntimeInitialized = resolve;
    });
  }
  return { cv };
};
