// Compares the notes of every scale and arpeggio, over two octaves up and down, with those that the
// library tonal spells from its own intervals.
//
//     node compare.mjs PROGRAM TONAL
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { runInThisContext } from 'node:vm';

const [program, library] = process.argv.slice(2);
runInThisContext(readFileSync(library, 'utf8'));
const { Chord, Note, Range, Scale } = globalThis.Tonal;
const octaves = 2;

// Our kinds in tonal's words, rising and falling.
const kinds = new Map([
  ['major', [Scale, 'major', 'major']],
  ['natural minor', [Scale, 'minor', 'minor']],
  ['harmonic minor', [Scale, 'harmonic minor', 'harmonic minor']],
  ['melodic minor', [Scale, 'melodic minor', 'minor']],
  ['major arpeggio', [Chord, 'M', 'M']],
  ['minor arpeggio', [Chord, 'm', 'm']],
  ['dominant seventh arpeggio', [Chord, '7', '7']],
  ['diminished seventh arpeggio', [Chord, 'dim7', 'dim7']],
]);

const run = (...words) => execFileSync(program, ['scale', ...words], { encoding: 'utf8' });

function notesWritten(text) {
  const notes = text.split('\n').filter((line) => /^[0-9A-G]/.test(line)).join(' ');
  return [...notes.matchAll(/([A-G][#bn]*\d):\d/g)].map((match) => match[1].replace('n', ''));
}

// From the tonic up to the tonic two octaves above.
function upward(from, intervals) {
  assert.ok(intervals.length > 0, 'tonal knows the kind');
  const notes = [];
  for (let octave = 0; octave < octaves; ++octave) {
    const tonic = Note.transpose(from, octave === 0 ? '1P' : '8P');
    notes.push(...intervals.map((interval) => Note.transpose(tonic, interval)));
  }
  return [...notes, Note.transpose(from, '15P')];
}

function notesExpected(tonic, kind, from) {
  const top = Note.transpose(from, '15P');
  if (kind === 'chromatic') {
    // Sharps up, flats down, but in the manner of a tonic that has a sign: our convention.
    const up = Range.chromatic([from, top], { sharps: !tonic.includes('b') });
    const down = Range.chromatic([top, from], { sharps: tonic.includes('#') });
    return [...up, ...down.slice(1)];
  }
  const [dictionary, rising, falling] = kinds.get(kind);
  const notes = (name) => upward(from, dictionary.get(name).intervals);
  return [...notes(rising), ...notes(falling).reverse().slice(1)];
}

// What is wrong with the notes that were written for a name; empty where nothing is.
function faultIn(name, written) {
  const [, letter, sign, kind] = /^([A-G])(-sharp|-flat)? (.*)$/.exec(name);
  const tonic = letter + (sign === undefined ? '' : { '-sharp': '#', '-flat': 'b' }[sign]);
  const expected = notesExpected(tonic, kind, `${tonic}${written[0].slice(-1)}`);
  if (written.join(' ') === expected.join(' ')) return '';
  return `${name}\n  expected: ${expected.join(' ')}\n  found:    ${written.join(' ')}`;
}

// A note with another name for its key, a note too few and another kind are faults.
const minor = notesExpected('C', 'harmonic minor', 'C4');
assert.equal(faultIn('C harmonic minor', minor), '');
assert.notEqual(faultIn('C harmonic minor', [...minor.slice(0, 2), 'D#4', ...minor.slice(3)]), '');
assert.notEqual(faultIn('C harmonic minor', minor.slice(0, -1)), '');
assert.notEqual(faultIn('C natural minor', minor), '');

const names = run('--list').trimEnd().split('\n');
assert.equal(names.length, 137);
const faults = [];
let notes = 0;
for (const name of names) {
  const written = notesWritten(run(name, '--hand', 'right', '--octaves', String(octaves), '--both'));
  notes += written.length;
  const fault = faultIn(name, written);
  if (fault !== '') faults.push(fault);
}
// Intervals from notes with every sign, as --transpose spells them: those with two signs or fewer.
const qualities = { m: 'minor', M: 'major', P: 'perfect', A: 'augmented', d: 'diminished' };
const numbers = ['', 'unison', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'octave'];
const pitches = [...'CDEFGAB'].flatMap((letter) => ['b', '', '#'].map((sign) => `${letter}${sign}4`));
let moves = 0;
for (const interval of '2m 2M 2A 3m 3M 3d 4P 4A 4d 5P 5d 5A 6m 6M 6A 7m 7M 7d 8P'.split(' ')) {
  for (const way of ['up', 'down']) {
    const words = `${way} a ${qualities[interval[1]]} ${numbers[interval[0]]}`;
    const found = execFileSync(program, ['annotate', '-', '--format', 'passage', '--transpose', words], {
      encoding: 'utf8',
      input: `${pitches.join(' ')}\n`,
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    const written = [...found.split('\n').at(-2).matchAll(/([A-G])(##|x|#|bb|b|n)?(\d)/g)].map(
      ([, letter, sign, octave]) => letter + (sign ?? '').replace('x', '##').replace('n', '') + octave,
    );
    assert.equal(written.length, pitches.length, words);
    for (const [i, pitch] of pitches.entries()) {
      const expected = Note.transpose(pitch, way === 'up' ? interval : `-${interval}`);
      if (/###|bbb/.test(expected)) continue;
      ++moves;
      if (written[i] !== expected) faults.push(`${pitch} ${words}: expected ${expected}, found ${written[i]}`);
    }
  }
}
assert.ok(moves > 700);

for (const fault of faults) console.log(fault);
console.log(`${names.length} scales and arpeggios with ${notes} notes, and ${moves} intervals, ${faults.length} spelled otherwise`);
process.exitCode = faults.length === 0 ? 0 : 1;
