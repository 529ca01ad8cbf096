/** Words of the search: they come with it. */
import { EN_SEARCH } from "../words/en.search.ts";
import { sayLater } from "../words/sayLater.ts";

export const saySearch = sayLater("search", EN_SEARCH);
