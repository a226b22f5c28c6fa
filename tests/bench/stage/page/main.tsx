import { createRoot } from 'react-dom/client';
import { BarePage } from './BarePage.tsx';
import { StagePage } from './StagePage.tsx';
import { TagPage } from './TagPage.tsx';

const pages = { stage: StagePage, bare: BarePage, tags: TagPage } as const;
const wanted = new URL(location.href).searchParams.get('page');
const Page = wanted === 'bare' || wanted === 'tags' ? pages[wanted] : pages.stage;
const root = document.getElementById('root');
if (root) createRoot(root).render(<Page />);
