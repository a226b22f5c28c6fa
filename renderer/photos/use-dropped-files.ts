import { useEffect, useEffectEvent, useState } from 'react';

const filesOf = (data: DataTransfer | null): readonly File[] => [...(data?.files ?? [])];

const hasFiles = (data: DataTransfer | null): boolean => data?.types.includes('Files') ?? false;

/** Hears files dropped anywhere on the window and pictures pasted outside a text field. True while a drag is over it. */
export function useDroppedFiles(
  onDrop: (files: readonly File[]) => void,
  onPaste: (files: readonly File[]) => void,
): boolean {
  const [isOver, setOver] = useState(false);
  const drop = useEffectEvent(onDrop);
  const pasted = useEffectEvent(onPaste);
  useEffect(() => {
    // Entering a child fires before leaving its parent, so the two are counted.
    let depth = 0;
    const handleEnter = (event: DragEvent) => {
      if (!hasFiles(event.dataTransfer)) return;
      depth += 1;
      setOver(true);
    };
    const handleOver = (event: DragEvent) => {
      if (hasFiles(event.dataTransfer)) event.preventDefault();
    };
    const handleLeave = () => {
      depth = Math.max(0, depth - 1);
      if (depth === 0) setOver(false);
    };
    const handleDrop = (event: DragEvent) => {
      if (!hasFiles(event.dataTransfer)) return;
      event.preventDefault();
      depth = 0;
      setOver(false);
      drop(filesOf(event.dataTransfer));
    };
    const handlePaste = (event: ClipboardEvent) => {
      const files = filesOf(event.clipboardData);
      if (files.length === 0) return;
      event.preventDefault();
      pasted(files);
    };
    window.addEventListener('dragenter', handleEnter);
    window.addEventListener('dragover', handleOver);
    window.addEventListener('dragleave', handleLeave);
    window.addEventListener('drop', handleDrop);
    window.addEventListener('paste', handlePaste);
    return () => {
      window.removeEventListener('dragenter', handleEnter);
      window.removeEventListener('dragover', handleOver);
      window.removeEventListener('dragleave', handleLeave);
      window.removeEventListener('drop', handleDrop);
      window.removeEventListener('paste', handlePaste);
    };
  }, []);
  return isOver;
}
