import type { IncomingMessage, ServerResponse } from 'node:http';

/** Whether the app can do its work now, and what stands in the way. */
export type Readiness = { readonly ready: boolean; readonly reason?: string };

export type HealthRoute = {
  readonly path: string;
  readonly method: 'GET';
  readonly handler: (request: IncomingMessage, response: ServerResponse) => void;
};

/** `/health/live`: the process answers. `/health`: it can serve, else 503. */
export function healthRoutes(readiness: () => Promise<Readiness>): HealthRoute[] {
  const answer = (response: ServerResponse, status: number, body: unknown) => {
    response.writeHead(status, { 'content-type': 'application/json', 'cache-control': 'no-store' });
    response.end(JSON.stringify(body));
  };
  return [
    {
      path: '/health/live',
      method: 'GET',
      handler: (_request, response) => answer(response, 200, { live: true }),
    },
    {
      path: '/health',
      method: 'GET',
      handler: (_request, response) => {
        readiness().then(
          (state) => answer(response, state.ready ? 200 : 503, { live: true, ...state }),
          () => answer(response, 503, { live: true, ready: false, reason: 'storage does not answer' }),
        );
      },
    },
  ];
}
