/** Words of the screen of one's own catalogue. They come with it. */
export const EN_IMPORT = {
  title: "Your own catalogue",
  tagline: "Stars out of a file of yours, for hops in the catalogue sky.",
  toStart: "Start page",

  files: "The file",
  choose: "Choose a file",
  another: "Choose another file",
  cancel: "Cancel",
  dropHere: "Let go to take it in.",

  nothingTitle: "What a file holds",
  nothing1: "A CSV file with a header row, or a VOTable (TABLEDATA, BINARY or BINARY2); up to 1,000,000 rows.",
  nothing2: "Each row is a star: right ascension, declination, and V magnitude down to 12.5.",
  nothing3:
    "Places in degrees, or as 18:53:35 and -33:30:00; J2000. B-V, proper motion, epoch and name are read where there are any.",
  nothing4: "Choose a file, or drop one here. It is read on this machine and sent nowhere.",

  progress: "How far it is",
  reading: "Reading {name}: {rows} rows, {percent} % of the file.",
  sorting: "{rows} rows read. The stars are being laid into tiles.",
  keeping: "{rows} rows read. The tiles are being written down.",
  staying:
    "You may look at other screens meanwhile: it goes on as long as this page stays open. What was here before is kept until all is there.",
  began: "Taking in {name}.",

  taken: "{name} has been taken in. Stars: {stars}.",
  cancelled: "Cancelled. What was here before is unchanged.",
  cancelledNone: "Cancelled. Nothing was kept.",
  removed: "Your catalogue has been removed.",
  badFile: "Not taken in. {what}. {hint}",
  unreadable: "Not taken in: the file can no longer be read. It may have been moved or changed: choose it again.",
  full: "Not taken in: the browser has no room left for it. Remove other data of this page, or leave out faint stars.",
  other: "Not taken in: the browser stopped it ({what}). Load the page again.",
  unchanged: "What was here before is unchanged.",
  noBase: "This browser keeps nothing, so no catalogue can be taken in. A private window may be the reason.",

  sheet: "What was read",
  rows: "rows read",
  stars: "stars taken",
  left: "rows left out",
  ofThem: "of them: {why}",
  namesAll: "{of} names are kept. Find them with the search.",
  names: "{kept} of {of} names are kept, those of the brightest stars first. Find them with the search.",
  takenOn: "taken in on {date}",

  badTitle: "Rows to mend",
  badNone: "No bad rows.",
  badAll: "{count} bad rows. The others were taken.",
  badOne: "1 bad row. The others were taken.",
  badFirst: "{count} bad rows; the first {shown} are listed. The others were taken.",
  line: "line {line}",
  row: "row {line}",

  use: "Use its stars in the catalogue sky",
  on: "on",
  off: "off",
  useNote:
    "Field, sheet and report then have your stars. The sky's own names, objects and the Milky Way stay. Nothing beyond your stars is invented.",
  notKept:
    "Such hops are not written in the logbook and earn nothing in the course: waymarks are chosen for our own catalogue, and yours may lack them. Practice skies, printed sheets and the lesson bench are as before.",
  remove: "Remove it",

  lookTitle: "Look round",
  lookNote: "Among your own stars, with every instrument. Nothing is sought, and nothing is counted.",
  lookBrightest: "From its brightest star",
  lookBrightestName: "The brightest star",
  lookLabel: "From a name",
  lookThere: "From there",
  lookNone: "Nothing bears the name {name}.",
  lookEmpty: "No star of your catalogue came.",
  lookBriefing: "{name} stands in the middle of the field, among your own stars.",
  lookNothing: "Nothing is sought, and nothing is counted or kept.",
  lookNow: "Look round.",
  lookSay: "{name} stands in the middle. Every instrument is at hand.",

  thinTitle: "Few stars to hop by",
  thin: "The emptiest field of this way shows {count} stars of your catalogue. With fewer than five a field looks like any other.",
  thinOne:
    "The emptiest field of this way shows 1 star of your catalogue. With fewer than five a field looks like any other.",
  thinNone: "Your catalogue has no star in one of the fields of this way: the field would be empty.",
  thinCatalogue: "Hop with the page's own stars",
  thinHop: "Hop all the same",
} as const;
