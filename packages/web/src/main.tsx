import '@fontsource-variable/inter/wght.css';
import '@fontsource-variable/inter/wght-italic.css';
import './styles/index.css';
import { QueryCache, QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { ApiError } from './api/client.ts';
import { shareAnswers } from './api/read-at.ts';
import { sessionQuery } from './api/session.ts';
import { routerOver } from './app/router.tsx';
import { renewWhenPartsAreMissing } from './browser/renew.ts';
import { language } from './text/language.ts';

/** Asking again would be answered alike. */
const FINAL = new Set(['signed-out', 'forbidden', 'not-found', 'refused']);

document.documentElement.lang = language;
renewWhenPartsAreMissing();

const queries = new QueryClient({
  // Whichever answer tells first that the session has ended.
  queryCache: new QueryCache({
    onError: (error) => {
      if (error instanceof ApiError && error.kind === 'signed-out')
        void queries.invalidateQueries({ queryKey: sessionQuery.queryKey });
    },
  }),
  defaultOptions: {
    queries: {
      staleTime: 60_000,
      // What the device has kept is asked for without signal too, and anew once there is some.
      networkMode: 'always',
      refetchOnReconnect: true,
      structuralSharing: shareAnswers,
      retry: (failures, error) => failures < 2 && !(error instanceof ApiError && FINAL.has(error.kind)),
      retryDelay: 600,
    },
  },
});

const router = routerOver(queries);
/** So long the first picture waits for its letters, which are asked for beside its scripts. */
const LETTERS_MS = 250;
const letters = Promise.all(['', 'italic '].map((style) => document.fonts.load(`${style}1em "Inter Variable"`)));
const longEnough = new Promise((resolve) => setTimeout(resolve, LETTERS_MS));

// There is nothing to show before the page's scripts are here; with them the first picture is drawn in one piece.
await Promise.all([router.load(), Promise.race([letters, longEnough])]).catch(() => undefined);

createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <RouterProvider router={router} />
    </QueryClientProvider>
  </StrictMode>,
);
