/** Which screen stands, and what it is given. The first screen comes with the page; the others when they are asked for. */
import type { FunctionComponent } from "preact";
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import { ownInUse } from "../import/inUse.ts";
import { actOfKey } from "../keys.ts";
import type { Attempt } from "../play/attempt.ts";
import { createPlay } from "../play/controller.ts";
import { PlayScreen } from "../play/PlayScreen.tsx";
import { bodiesReady, practiceReady } from "../play/skies.ts";
import { searchShown } from "../search/found.ts";
import type { Desk } from "./begin.ts";
import { lessonOf } from "./lessonOf.ts";
import { goTo, keysShown, nextLamp, screen, soundOn } from "./state.ts";

/** A lesson being hopped; a new one for each visit. */
function Play({ desk, lesson }: { desk: Desk; lesson: Lesson }) {
  const model = useMemo(() => {
    const onEnded = async (attempt: Attempt) => {
      const { finish } = await import("./finish.ts");
      const { id } = await finish(desk, lesson, attempt);
      goTo({ kind: "report", attemptId: id });
    };
    return createPlay({ lesson, ports: desk, onEnded: (attempt) => void onEnded(attempt) });
  }, [desk, lesson]);
  useEffect(() => () => model.unmount(), [model]);
  return <PlayScreen model={model} />;
}

/** A screen whose code comes when it is first shown. */
function Later<Props extends object>({
  load,
  props,
  over = false,
}: {
  load: () => Promise<FunctionComponent<Props>>;
  props: Props;
  /** It comes over a screen: until it is there nothing stands for it. */
  over?: boolean;
}) {
  const [Loaded, setLoaded] = useState<{ it: FunctionComponent<Props> } | null>(null);
  useEffect(() => {
    let here = true;
    void load().then((it) => here && setLoaded({ it }));
    return () => {
      here = false;
    };
  }, [load]);
  if (Loaded) return <Loaded.it {...props} />;
  return over ? null : <main class="waiting" aria-busy="true" />;
}

/** A screen that may show any lesson: of a practice sky, or with bodies of its own. */
const withAll = async <Screen,>(screen: Promise<Screen>): Promise<Screen> => {
  await Promise.all([practiceReady(), bodiesReady()]);
  return screen;
};
const loadPlay = () => practiceReady().then(() => Play);
const loadPlayOfAll = () => withAll(Promise.resolve(Play));
const loadStart = () => withAll(import("../start/StartScreen.tsx").then(({ StartScreen }) => StartScreen));
const loadReport = () => withAll(import("../report/ReportScreen.tsx").then(({ ReportScreen }) => ReportScreen));
const loadKeys = () => import("../play/KeysPanel.tsx").then(({ KeysPanel }) => KeysPanel);
const loadSearch = () => import("../search/SearchPanel.tsx").then(({ SearchPanel }) => SearchPanel);
const loadPrint = () => withAll(import("../print/PrintScreen.tsx").then(({ PrintScreen }) => PrintScreen));
const loadImport = () => withAll(import("../import/ImportScreen.tsx").then(({ ImportScreen }) => ImportScreen));
const loadScreen = () => import("../screen/ScreenPage.tsx").then(({ ScreenPage }) => ScreenPage);
const loadOwnHop = () => withAll(import("../import/OwnHop.tsx").then(({ OwnHop }) => OwnHop));
const loadBench = () => withAll(import("../bench/BenchScreen.tsx").then(({ BenchScreen }) => BenchScreen));

/** Keys that mean the same on every screen. */
function usePageKeys() {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented) return;
      if (event.key === "Escape" && (keysShown.value || searchShown.value)) {
        if (keysShown.value) keysShown.value = false;
        else searchShown.value = false;
        event.preventDefault();
      }
      const act = actOfKey(event);
      if (act === "lamp") nextLamp();
      else if (act === "sound") soundOn.value = !soundOn.value;
      else if (act === "find") {
        // The key is no letter of the name.
        event.preventDefault();
        searchShown.value = true;
      } else if (act === "help") keysShown.value = !keysShown.value;
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, []);
}

/** The lesson that the screen is about, by its id. */
function lessonIdOf({ finished }: Desk): string | undefined {
  const now = screen.value;
  if (now.kind === "play" || now.kind === "print") return now.lessonId;
  return now.kind === "report" ? finished.find(({ id }) => id === now.attemptId)?.lessonId : undefined;
}

function Screen({ desk }: { desk: Desk }) {
  const now = screen.value;
  const open = (lessonId: string) => goTo({ kind: "play", lessonId });
  const toStart = () => goTo({ kind: "start" });
  const lesson = lessonOf(desk.lessons, lessonIdOf(desk) ?? "");
  if (lesson === "coming") return <main class="waiting" aria-busy="true" />;
  if (now.kind === "play" && lesson) {
    const isOwn = ownInUse.value && lesson.sky === "catalogue";
    const load = lesson.bodies.length > 0 ? loadPlayOfAll : lesson.sky === "catalogue" ? null : loadPlay;
    if (load && !isOwn) return <Later key={lesson.id} load={load} props={{ desk, lesson }} />;
    if (!isOwn) return <Play key={lesson.id} desk={desk} lesson={lesson} />;
    return <Later key={`own ${lesson.id}`} load={loadOwnHop} props={{ lesson, sound: desk.sound, onBack: toStart }} />;
  }
  if (now.kind === "bench") return <Later key="bench" load={loadBench} props={{ desk, trying: now.trying }} />;
  if (now.kind === "catalogue") return <Later key="catalogue" load={loadImport} props={{ sound: desk.sound }} />;
  if (now.kind === "screen") return <Later key="screen" load={loadScreen} props={{}} />;
  if (now.kind === "print" && lesson)
    return <Later key={`print ${lesson.id}`} load={loadPrint} props={{ lesson, finished: desk.finished }} />;
  if (now.kind === "report") {
    const attempt = desk.finished.find(({ id }) => id === now.attemptId);
    if (attempt && lesson) {
      const props = { attempt, lesson, lessons: desk.lessons, finished: desk.finished, onOpen: open, onStart: toStart };
      return <Later key={attempt.id} load={loadReport} props={props} />;
    }
  }
  return (
    <Later
      load={loadStart}
      props={{ lessons: desk.lessons, finished: desk.finished, onOpen: open, trouble: desk.store.trouble }}
    />
  );
}

/** The search, over the screen that stands. */
function Search({ desk: { lessons } }: { desk: Desk }) {
  const now = screen.value;
  const lesson = now.kind === "play" ? lessonOf(lessons, now.lessonId) : null;
  if (lesson === "coming") return null;
  return <Later load={loadSearch} props={{ lesson, lessons }} over />;
}

/** The screen, and over any of them the table of keys and the search. */
export function App({ desk }: { desk: Desk }) {
  usePageKeys();
  return (
    <>
      <Screen desk={desk} />
      {searchShown.value && <Search desk={desk} />}
      {keysShown.value && <Later load={loadKeys} props={{}} over />}
    </>
  );
}
