import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A call that the system was sent, in the order of arrival. */
export interface Call {
  readonly what: 'token' | 'launchData' | 'preferences' | 'getState' | 'putState' | 'statement';
  readonly verb?: string;
  readonly statement?: unknown;
}

/** How the system starts a unit. */
export interface Launch {
  readonly mode?: 'Normal' | 'Browse' | 'Review';
  readonly masteryScore?: number;
  readonly returnURL?: string;
}

const STATEMENT = '/xapi/statements';
const lastPart = (verb: unknown): string => String(verb).split('/').pop() ?? '';

async function bodyOf(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts).toString('utf8');
}

/**
 * The learning system's side of cmi5 as far as a unit sees it: token once, launch data, preferences, a state document and
 * statements, which it takes from whoever has the token.
 */
export async function cmi5System(launch: Launch = {}) {
  const calls: Call[] = [];
  const state = { text: null as string | null, isTokenGiven: false, isAway: false };
  const answer = (to: ServerResponse, status: number, body = '', type = 'application/json') =>
    void to
      .writeHead(status, {
        'content-type': type,
        'access-control-allow-origin': '*',
        'access-control-allow-headers': 'authorization, content-type, x-experience-api-version',
        'access-control-allow-methods': 'GET, PUT, POST',
      })
      .end(body);

  const server = createServer(async (request, to) => {
    const { pathname, searchParams } = new URL(request.url ?? '/', 'http://system');
    if (request.method === 'OPTIONS') return answer(to, 204);
    if (state.isAway) return answer(to, 503);
    if (pathname === '/fetch') {
      calls.push({ what: 'token' });
      if (state.isTokenGiven) return answer(to, 200, '{"error-code":"1","error-text":"used"}');
      state.isTokenGiven = true;
      return answer(to, 200, '{"auth-token":"dGVzdDp0ZXN0"}');
    }
    if (request.headers.authorization !== 'Basic dGVzdDp0ZXN0') return answer(to, 401);
    if (searchParams.get('stateId') === 'LMS.LaunchData') {
      calls.push({ what: 'launchData' });
      return answer(to, 200, JSON.stringify(launchData(launch)));
    }
    if (pathname === '/xapi/agents/profile') {
      calls.push({ what: 'preferences' });
      return answer(to, 404);
    }
    if (pathname === '/xapi/activities/state' && request.method === 'PUT') {
      state.text = await bodyOf(request);
      calls.push({ what: 'putState' });
      return answer(to, 204);
    }
    if (pathname === '/xapi/activities/state') {
      calls.push({ what: 'getState' });
      return state.text === null ? answer(to, 404) : answer(to, 200, state.text, 'text/plain');
    }
    if (pathname === STATEMENT) {
      const statement = JSON.parse(await bodyOf(request));
      calls.push({ what: 'statement', verb: lastPart(statement.verb?.id), statement });
      return answer(to, 204);
    }
    return answer(to, 404);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const query = new URLSearchParams({
    endpoint: `${base}/xapi/`,
    fetch: `${base}/fetch`,
    actor: JSON.stringify({
      objectType: 'Agent',
      account: { homePage: 'https://school.invalid', name: 'north-1' },
    }),
    activityId: 'https://freestroke.invalid/work/1',
    registration: '5f2f9a1e-2a4b-4c3d-8e9f-0a1b2c3d4e5f',
  });
  return { calls, state, origin: base, query: query.toString(), close: () => server.close() };
}

function launchData({
  mode = 'Normal',
  masteryScore = 0.8,
  returnURL = 'https://school.invalid/back',
}: Launch): object {
  return {
    contextTemplate: {
      contextActivities: { grouping: [{ id: 'https://freestroke.invalid/work' }] },
      extensions: { 'https://w3id.org/xapi/cmi5/context/extensions/sessionid': 'sitting-1' },
    },
    launchMode: mode,
    masteryScore,
    moveOn: 'CompletedAndPassed',
    returnURL,
  };
}
