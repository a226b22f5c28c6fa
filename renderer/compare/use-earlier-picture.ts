import { useEffect, useState } from 'react';
import type { MatchedPair } from '../../shared-lib/contract/comparisons.ts';
import type { Box, Size } from '../../shared-lib/geometry/spaces.ts';
import { type View, visiblePart } from '../../shared-lib/geometry/viewport.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { call } from '../api/client.ts';

/** A straightened part of the earlier photo, ready to be drawn. */
export interface EarlierPiece {
  readonly url: string;
  /** The part of today's photo that it covers, and its own size. */
  readonly part: Box;
  /** The points that it was straightened by. */
  readonly pairs: readonly MatchedPair[];
}

const wholeEdge = 2048;
const stillForMs = 220;

interface Wanted {
  readonly shot: Shot;
  readonly earlier: Shot;
  readonly pairs: readonly MatchedPair[];
  readonly isWanted: boolean;
  readonly view: View;
  readonly stage: Size;
}

/**
 * The earlier photo straightened onto today's, by the recorder: the whole of it, and what is looked at closely once the
 * hand is still.
 */
export function useEarlierPicture({ shot, earlier, pairs, isWanted, view, stage }: Wanted): readonly EarlierPiece[] {
  const [whole, setWhole] = useState<EarlierPiece | null>(null);
  const [detail, setDetail] = useState<EarlierPiece | null>(null);

  useEffect(() => {
    if (!isWanted) return;
    return afterAWhile(60, async (isOver) => {
      const piece = await ask(shot, earlier, pairs, { x: 0, y: 0, width: shot.width, height: shot.height }, wholeEdge);
      if (!isOver()) setWhole(piece);
    });
  }, [shot, earlier, pairs, isWanted]);

  const longest = Math.max(shot.width, shot.height);
  const isClose = view.scale * window.devicePixelRatio > (1.3 * Math.min(wholeEdge, longest)) / longest;
  useEffect(() => {
    setDetail(null);
    if (!isWanted || !isClose || longest <= wholeEdge) return;
    return afterAWhile(stillForMs, async (isOver) => {
      const { left, top, right, bottom } = visiblePart(view, shot, stage);
      const [x, y] = [Math.max(0, Math.floor(left)), Math.max(0, Math.floor(top))];
      const width = Math.min(shot.width, Math.ceil(right) + 1) - x;
      const height = Math.min(shot.height, Math.ceil(bottom) + 1) - y;
      if (width < 1 || height < 1) return;
      const most = Math.ceil(Math.max(width, height) * view.scale * window.devicePixelRatio);
      const edge = Math.max(16, Math.min(4096, most, Math.max(width, height)));
      const piece = await ask(shot, earlier, pairs, { x, y, width, height }, edge);
      if (!isOver()) setDetail(piece);
    });
  }, [shot, earlier, pairs, isWanted, isClose, longest, view, stage]);

  return [whole, detail].filter((piece): piece is EarlierPiece => piece !== null && piece.pairs === pairs);
}

async function ask(
  shot: Shot,
  earlier: Shot,
  pairs: readonly MatchedPair[],
  region: { x: number; y: number; width: number; height: number },
  edge: number,
): Promise<EarlierPiece> {
  const asked = { shotId: shot.id, earlierShotId: earlier.id, pairs: [...pairs], ...region, edge };
  const { url } = await call('comparison.picture', asked);
  // Fetched before it is shown, so that nothing goes blank meanwhile.
  const picture = new Image();
  picture.src = url;
  await picture.decode().catch(() => {});
  const { x, y, width, height } = region;
  return { url, part: { left: x - 0.5, top: y - 0.5, right: x + width - 0.5, bottom: y + height - 0.5 }, pairs };
}

function afterAWhile(waitMs: number, work: (isOver: () => boolean) => Promise<void>): () => void {
  let isOver = false;
  const timer = setTimeout(() => {
    // What was refused is told where the points are kept; the photo itself is still shown.
    work(() => isOver).catch(() => {});
  }, waitMs);
  return () => {
    isOver = true;
    clearTimeout(timer);
  };
}
