import './ui/fonts.css';
import './ui/tokens.css';
import './ui/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { watchPresses } from './api/pressed.ts';
import { App } from './app/App.tsx';
import { startBenchSettings } from './app/bench-settings.ts';

startBenchSettings();
watchPresses(window);

const root = document.getElementById('root');
if (root === null) throw new Error('The page has no root to draw in.');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
