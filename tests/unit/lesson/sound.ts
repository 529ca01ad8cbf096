/** A lesson without a fault, over the small sky; bad examples are edits of it. */
export const SOUND = `format: 1
id: t-01
title: Four degrees north
part: 1
number: 2
of: 8
minutes: 5
skills: [step, turn]
sky: catalogue
bodies:
  - name: Whin
    kind: comet
    epoch: 2027-09-01T00:00:00Z
    perihelionAu: 0.92
    eccentricity: 1
    inclinationDeg: 45
    nodeDeg: 300
    argumentDeg: 90
    perihelion: 2027-10-20T20:00:00Z
    totalMag: 6.5
    comaArcmin: 8
  - { name: Heather, kind: minorPlanet, epoch: 2027-09-01T00:00:00Z, semiMajorAu: 2.36, eccentricity: 0.09, inclinationDeg: 7, nodeDeg: 104, argumentDeg: 151, meanAnomalyDeg: 80, absoluteMag: 6 }
place: { name: Hill, latDeg: 50, lonDeg: 0, heightM: 250, skyMagPerArcsec2: 20.8 }
time: 2027-08-31T21:00:00Z
level: C
gear:
  mount: altazimuth
  stance: upright
  use: [eye, sight, finder-9x50, newton200-48x]
  hopping: finder-9x50
  claim: newton200-48x
aids: { ring: free, hints: priced }
weights: { directness: 25, pins: 45, care: 30 }
briefing:
  - Something pale lies north of the bright star.
stages:
  - hop:
      anchor: Bright
      target: Cluster
      ways:
        - name: straight up
          marks: [Bright, Mark, Cluster]
      steps:
        - when: start
          now: Find the bright star.
          say: It is the brightest here.
        - when: markReached:1
          now: One step more.
          say: As far again.
      hints:
        - [Look north., A lone star of six., Follow the line.]
        - [Look north again., Two stars point at it., Follow the line.]
      after:
        found: You went {trailDeg} degrees for {parDeg}.
        wrong: That is a star.
        shown: The line led you.
        notSeen: Right place, and honest.
        missed: You were {shortFields} fields off.
        outside: Come back to {anchor}.
        codes:
          INV-KEEP: North was down in your finder. You went up.
pass: { points: [70, 82, 92] }
afterwards: ["That cost {cost} points."]
`;
