import './page.css';
import { render } from 'preact';
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { PageState, ShownMessage, ShownPlace, TrafficLine } from '../page-answers.ts';
import { askServer } from './ask-server.ts';
import { ClockControl } from './clock-control.tsx';
import { Composer } from './composer.tsx';
import { MessageList } from './message-list.tsx';
import { ModalForm } from './modal-form.tsx';
import { type Reader, ReaderContext } from './reader.ts';
import { printRoute, type Route, readPermalink, readRoute } from './route.ts';
import { ShowBlock } from './show-block.tsx';
import { ThreadPane } from './thread-pane.tsx';
import { TrafficView } from './traffic-view.tsx';
import { useSurface } from './use-surface.ts';

const rememberedPerson = 'person';
const wideEnoughForTwo = '(min-width: 60rem)';

const placeTitle = (place: ShownPlace): string => (place.kind === 'channel' ? `# ${place.name}` : place.name);

const useRoute = (): readonly [Route, (next: Route) => void] => {
  const [route, setRoute] = useState<Route>(() => {
    const read = readRoute(location.hash);
    const linked = readPermalink(new URL(location.href));
    return { ...read, ...linked, as: read.as || (localStorage.getItem(rememberedPerson) ?? '') };
  });
  useEffect(() => {
    const follow = () => setRoute(readRoute(location.hash));
    addEventListener('popstate', follow);
    return () => removeEventListener('popstate', follow);
  }, []);
  const go = useCallback((next: Route) => {
    history.pushState(undefined, '', `/${printRoute(next)}`);
    localStorage.setItem(rememberedPerson, next.as);
    setRoute(next);
  }, []);
  return [route, go];
};

const PeopleSwitch = (props: {
  readonly state: PageState;
  readonly chosen: string;
  readonly choose: (id: string) => void;
}) => (
  <fieldset class="people">
    <legend class="spoken">You are</legend>
    {props.state.people.map((person) => (
      <label key={person.id} class={person.id === props.chosen ? 'person on' : 'person'}>
        <input
          type="radio"
          name="person"
          checked={person.id === props.chosen}
          onChange={() => props.choose(person.id)}
        />
        <span class="person-name">{person.name}</span>
        <span class="person-role">{person.role}</span>
        {person.unread > 0 && person.id !== props.chosen && (
          <span class="count">
            {person.unread}
            <span class="spoken"> new</span>
          </span>
        )}
      </label>
    ))}
  </fieldset>
);

const Places = (props: {
  readonly state: PageState;
  readonly current: string;
  readonly choose: (place: string) => void;
}) => {
  const direct = props.state.places.filter(({ kind }) => kind === 'direct');
  const channels = props.state.places.filter(({ kind }) => kind === 'channel');
  const entries = [
    ...direct.map((place) => ({ id: place.id, title: place.name, unread: place.unread })),
    ...(props.state.hasHome ? [{ id: 'home', title: 'Home', unread: 0 }] : []),
    ...channels.map((place) => ({ id: place.id, title: placeTitle(place), unread: place.unread })),
    { id: 'traffic', title: 'What was sent', unread: 0 },
  ];
  const title = entries.find(({ id }) => id === props.current)?.title;
  const news = entries.reduce((sum, { unread }) => sum + unread, 0);
  useEffect(() => {
    document.title = `${news > 0 ? `(${news}) ` : ''}${title ?? 'Nowhere'} · ${props.state.teamName}`;
  }, [news, title, props.state.teamName]);

  // On a phone the row of places is wider than the screen.
  const row = useRef<HTMLElement>(null);
  useEffect(() => {
    if (props.current !== '')
      row.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [props.current]);
  return (
    <nav class="places" aria-label="Places" ref={row}>
      {entries.map(({ id, title, unread }) => (
        <button
          type="button"
          key={id}
          aria-current={id === props.current ? 'page' : undefined}
          onClick={() => props.choose(id)}
        >
          {title}
          {unread > 0 && id !== props.current && (
            <span class="count">
              {unread}
              <span class="spoken"> new</span>
            </span>
          )}
        </button>
      ))}
    </nav>
  );
};

const HomeView = (props: { readonly state: PageState; readonly tell: (message: string) => void }) => {
  const { home, me, appName } = props.state;
  const form = useSurface(me.id, { kind: 'view', id: home?.id ?? '' }, props.tell);
  return (
    <section class="scroll-page" aria-label={`${appName}'s home`}>
      <h2 class="spoken">{appName}'s home</h2>
      {home === undefined ? (
        <p class="empty">{appName} has put nothing here yet.</p>
      ) : (
        <div class="home content" aria-busy={form.isBusy}>
          {home.blocks.map((block) => (
            <ShowBlock key={block.block_id} block={block} form={form} />
          ))}
        </div>
      )}
    </section>
  );
};

/** What was last read, and for whom: it is shown nowhere else while the next place is on its way. */
type Loaded = {
  readonly as: string;
  readonly place: string;
  readonly messages: readonly ShownMessage[];
};
const nothingLoaded: Loaded = { as: '', place: '', messages: [] };

const Opening = () => (
  <p class="empty opening" role="status">
    Opening …
  </p>
);

const Page = () => {
  const [route, go] = useRoute();
  const [state, setState] = useState<PageState | undefined>(undefined);
  const [loaded, setLoaded] = useState<Loaded>(nothingLoaded);
  const [traffic, setTraffic] = useState<readonly TrafficLine[]>([]);
  const [notice, setNotice] = useState<string | undefined>(undefined);
  const [isLive, setLive] = useState(true);
  const latestLoad = useRef(0);

  const place =
    route.place === '' ? (state?.places.find(({ kind }) => kind === 'direct')?.id ?? '') : route.place;

  const load = useCallback(async () => {
    latestLoad.current += 1;
    const turn = latestLoad.current;
    const fresh = await askServer.state(route.as).catch(() => undefined);
    if (fresh === undefined || turn !== latestLoad.current) return;
    const target =
      route.place === '' ? (fresh.places.find(({ kind }) => kind === 'direct')?.id ?? '') : route.place;
    const [seen, sent] = await Promise.all([
      fresh.places.some(({ id }) => id === target) ? askServer.messages(fresh.me.id, target) : [],
      target === 'traffic' ? askServer.traffic() : [],
    ]);
    if (turn !== latestLoad.current) return;
    setState(fresh);
    setLoaded({ as: fresh.me.id, place: target, messages: seen ?? [] });
    setTraffic(sent ?? []);
    const unread = fresh.places.find(({ id }) => id === target)?.unread ?? 0;
    if (unread > 0 && document.visibilityState === 'visible')
      void askServer.read({ as: fresh.me.id, place: target });
  }, [route.as, route.place]);

  useEffect(() => {
    void load();
    const live = new EventSource('/local/live');
    live.onmessage = () => {
      setLive(true);
      void load();
    };
    live.onerror = () => setLive(false);
    const look = () => void load();
    document.addEventListener('visibilitychange', look);
    return () => {
      live.close();
      document.removeEventListener('visibilitychange', look);
    };
  }, [load]);

  const isThere = state !== undefined;
  const me = state?.me.id ?? '';
  // Whom one acts as from the click on; what is known of them follows.
  const chosen = state?.people.some(({ id }) => id === route.as) === true ? route.as : me;
  const shownPlace = chosen === me ? state?.places.find(({ id }) => id === place) : undefined;
  const isLoaded = chosen === me && loaded.as === me && loaded.place === place;
  const messages = isLoaded ? loaded.messages : nothingLoaded.messages;
  useEffect(() => {
    if (!isThere || chosen !== me) return;
    if (place === 'home') void askServer.openApp({ as: me, tab: 'home' });
    if (shownPlace?.kind === 'direct') void askServer.openApp({ as: me, tab: 'messages' });
  }, [chosen, isThere, me, place, shownPlace?.kind]);

  useEffect(() => {
    if (notice === undefined) return undefined;
    const timer = setTimeout(() => setNotice(undefined), 12_000);
    return () => clearTimeout(timer);
  }, [notice]);

  const [openedByItself, setOpenedByItself] = useState<string | undefined>(undefined);
  const openThread = useCallback(
    (ts: string) => {
      setOpenedByItself(undefined);
      go({ as: chosen, place, thread: ts });
    },
    [chosen, go, place],
  );
  const closeThread = () => {
    const opened = route.thread;
    const isOutside = document.activeElement?.matches('.place *') === true;
    go({ as: chosen, place });
    if (isOutside) return;
    requestAnimationFrame(() => document.querySelector<HTMLElement>(`[data-thread="${opened}"]`)?.focus());
  };

  const send = async (text: string, threadTs?: string): Promise<boolean> => {
    const result = await askServer.send({
      as: me,
      place,
      text,
      ...(threadTs === undefined ? {} : { threadTs }),
    });
    if (result.kind === 'failed') setNotice(result.message);
    return result.kind === 'done';
  };

  const timeZone = state?.clock?.timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  const topLevel = useMemo(
    () => messages.filter(({ ts, threadTs }) => threadTs === undefined || threadTs === ts),
    [messages],
  );

  // On a laptop the answer to one's newest message opens beside it.
  const newestMine = topLevel.findLast(({ isMine }) => isMine);
  const answered = messages.findLast(
    ({ threadTs, isMine }) => newestMine !== undefined && threadTs === newestMine.ts && !isMine,
  )?.ts;
  const shownAnswer = useRef<string | undefined>(undefined);
  const wasLoaded = useRef<string | undefined>(undefined);
  useEffect(() => {
    const where = `${me} ${place}`;
    const isFirstLook = wasLoaded.current !== where;
    if (isLoaded) wasLoaded.current = where;
    if (!isLoaded || answered === undefined || answered === shownAnswer.current) return;
    shownAnswer.current = answered;
    if (isFirstLook || newestMine === undefined || !matchMedia(wideEnoughForTwo).matches) return;
    setOpenedByItself(newestMine.ts);
    go({ as: me, place, thread: newestMine.ts });
  }, [answered, go, isLoaded, me, newestMine, place]);

  if (state === undefined)
    return (
      <p class="empty" role="status">
        Opening the workspace …
      </p>
    );

  const reader: Reader = {
    nameOf: (userId) =>
      userId === state.appUserId
        ? state.appName
        : (state.people.find(({ id }) => id === userId)?.name ?? userId),
    channelNameOf: (channelId) => state.places.find(({ id }) => id === channelId)?.name ?? 'private channel',
    people: state.people,
    channels: state.places.filter(({ kind }) => kind === 'channel'),
    timeZone,
    now: state.clock?.now ?? new Date().toISOString(),
    follow: (url) => {
      const address = new URL(url, location.href);
      const linked = address.origin === location.origin ? readPermalink(address) : undefined;
      if (linked !== undefined) go({ as: chosen, ...linked });
      return linked !== undefined;
    },
  };
  const withNews = topLevel.filter(({ ts, newReplies }) => newReplies > 0 && ts !== route.thread);
  const nextNews = withNews.at(-1);
  const thread =
    route.thread !== undefined && messages.some(({ ts }) => ts === route.thread) ? route.thread : undefined;

  return (
    <ReaderContext.Provider value={reader}>
      <div class={thread === undefined ? 'page' : 'page with-thread'}>
        <header class="top">
          <div class="brand">
            <svg viewBox="0 0 24 24" aria-hidden="true">
              <rect x="2" y="4" width="20" height="3.4" rx="1.7" />
              <rect x="2" y="10.3" width="20" height="3.4" rx="1.7" />
              <rect x="2" y="16.6" width="20" height="3.4" rx="1.7" />
            </svg>
            <h1>
              {state.appName} <span>{state.teamName}</span>
            </h1>
          </div>
          {state.clock !== undefined && (
            <ClockControl
              clock={state.clock}
              canReset={state.canReset}
              whenReset={() => go({ as: chosen, place: '' })}
            />
          )}
          <PeopleSwitch
            state={state}
            chosen={chosen}
            choose={(id) => {
              const shared = state.places.some((each) => each.id === place && each.kind === 'channel');
              go({ as: id, place: shared || place === 'home' || place === 'traffic' ? place : '' });
            }}
          />
          <Places state={state} current={place} choose={(next) => go({ as: chosen, place: next })} />
        </header>
        {(!isLive || !state.isAppConnected) && (
          <p class="strip" role="status">
            {isLive
              ? `${state.appName} is not connected yet: what you write waits for nobody.`
              : 'The local workspace does not answer. Start it again and this page comes back by itself.'}
          </p>
        )}
        <main
          onKeyDown={(event) => {
            if (event.key === 'Escape' && !event.defaultPrevented && thread !== undefined) closeThread();
          }}
        >
          {place === 'home' && isLoaded && <HomeView key={me} state={state} tell={setNotice} />}
          {!isLoaded && shownPlace === undefined && place !== 'traffic' && <Opening />}
          {place === 'traffic' && (
            <TrafficView
              lines={traffic}
              groups={state.groups}
              canReset={state.canReset}
              whenReset={() => go({ as: chosen, place: '' })}
            />
          )}
          {shownPlace !== undefined && (
            <>
              <section class="place" aria-label={placeTitle(shownPlace)}>
                <h2 class="spoken">{placeTitle(shownPlace)}</h2>
                <div class="purpose">
                  <p>{shownPlace.purpose}</p>
                  {nextNews !== undefined && (
                    <button type="button" class="new-in-threads" onClick={() => openThread(nextNews.ts)}>
                      {withNews.length === 1 ? 'New in 1 thread' : `New in ${withNews.length} threads`}
                    </button>
                  )}
                </div>
                <MessageList
                  key={`${me} ${place}`}
                  state={state}
                  place={place}
                  isOpening={!isLoaded}
                  label={`Messages in ${placeTitle(shownPlace)}`}
                  shown={topLevel}
                  all={messages}
                  timeZone={timeZone}
                  tell={setNotice}
                  openThread={openThread}
                  {...(thread === undefined ? {} : { opened: thread })}
                  emptyText={
                    shownPlace.kind === 'direct'
                      ? `Nothing here yet. Write to ${state.appName} below: a whole class, or just hello.`
                      : `Nothing here yet. ${state.appName} posts here when there is something to tell.`
                  }
                />
                <Composer
                  key={`${me} ${place}`}
                  draftKey={`draft ${me} ${place}`}
                  label={`Message to ${placeTitle(shownPlace)}`}
                  commands={state.commands}
                  send={(text) => send(text)}
                />
              </section>
              {thread !== undefined && (
                <ThreadPane
                  key={thread}
                  state={state}
                  place={place}
                  placeName={placeTitle(shownPlace)}
                  threadTs={thread}
                  all={messages}
                  timeZone={timeZone}
                  tell={setNotice}
                  send={(text) => send(text, thread)}
                  close={closeThread}
                  takesFocus={thread !== openedByItself}
                />
              )}
            </>
          )}
          {place !== 'home' && place !== 'traffic' && isLoaded && shownPlace === undefined && (
            <p class="empty">{state.me.name} is not in this place. Choose another above.</p>
          )}
        </main>
        {notice !== undefined && (
          <div class="notice" role="alert">
            <p>{notice}</p>
            <button type="button" class="quiet" aria-label="Dismiss" onClick={() => setNotice(undefined)}>
              <svg viewBox="0 0 16 16" aria-hidden="true">
                <path d="M3.5 3.5l9 9M12.5 3.5l-9 9" />
              </svg>
            </button>
          </div>
        )}
        {state.modal !== undefined && chosen === me && (
          <ModalForm key={state.modal.id} as={me} modal={state.modal} />
        )}
      </div>
    </ReaderContext.Provider>
  );
};

const root = document.getElementById('page');
if (root !== null) render(<Page />, root);
