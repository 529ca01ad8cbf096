import { useEffect, useState } from "preact/hooks";

const carriesFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes("Files") ?? false;

/** Takes files that are dropped anywhere on the page; true while one is held over it. */
export function useDrop(onFile: (file: File) => void): boolean {
  const [isOver, setIsOver] = useState(false);
  useEffect(() => {
    const onOver = (event: DragEvent) => {
      if (!carriesFiles(event)) return;
      event.preventDefault();
      setIsOver(true);
    };
    const onLeave = ({ relatedTarget }: DragEvent) => {
      if (relatedTarget === null) setIsOver(false);
    };
    const onDrop = (event: DragEvent) => {
      setIsOver(false);
      if (!carriesFiles(event)) return;
      // Else the browser would leave the page for the file.
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) onFile(file);
    };
    addEventListener("dragover", onOver);
    addEventListener("dragleave", onLeave);
    addEventListener("drop", onDrop);
    return () => {
      removeEventListener("dragover", onOver);
      removeEventListener("dragleave", onLeave);
      removeEventListener("drop", onDrop);
    };
  }, [onFile]);
  return isOver;
}
