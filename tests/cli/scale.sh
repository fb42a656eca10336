#!/usr/bin/env bash
# Handbook scales as passages.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

# A whole one, in any words.
cat >expected <<'END'
passage: B-flat major scale, left hand, 2 octaves
hand: left
# Fingers from memory after C.-L. Hanon, The Virtuoso Pianist (1873), no. 39.
meter: 4/4
1/8 Bb2:3 C3:2 D3:1 Eb3:4 F3:3 G3:2 A3:1 Bb3:3 |
C4:2 D4:1 Eb4:4 F4:3 G4:2 A4:1 1/4 Bb4:3 ||
END
run scale 'B-flat major' --hand left --octaves 2
status_is 0
is_empty err
same_files expected out
for name in 'Bb major' 'b flat major' 'B♭ major scale'; do
  run scale "$name" --hand left --octaves 2 --from Bb2
  same_files expected out
done
run scale B flat major --hand left --octaves 2
same_files expected out

run scale Bb major
is "$(cat out)" 'passage: B-flat major scale, both hands, 1 octave
# Fingers from memory after C.-L. Hanon, The Virtuoso Pianist (1873), no. 39.
# In the right hand other handbooks have 2 on the lowest note (from memory).
meter: 4/4
RH: 1/8 Bb3:4 C4:1 D4:2 Eb4:3 F4:1 G4:2 A4:3 Bb4:4 ||
LH: 1/8 Bb2:3 C3:2 D3:1 Eb3:4 F3:3 G3:2 A3:1 Bb3:3 ||'
run scale Bb major --hand right --down
has out '1/8 Bb4:4 A4:3 G4:2 F4:1 Eb4:3 D4:2 C4:1 Bb3:4 ||'
run scale 'C minor arpeggio' --hand right --both
has out 'meter: 6/8'
has out '1/8 C4:1 Eb4:2 G4:3 C5:5 G4:3 Eb4:2 | 1/2. C4:1 ||'

# Everything that it lists is read and analysed without a word, comments included.
run scale --list
status_is 0
is_empty err
mapfile -t names <out
is "${#names[@]}" 137
is "$(sort --unique out | wc --lines)" 137
for name in 'B-flat major' 'F-sharp harmonic minor' 'C chromatic' 'G dominant seventh arpeggio'; do
  holds "$name is listed" grep --quiet --line-regexp -e "$name" out
done
run scale --list --output names
is_empty out
is "$(wc --lines <names)" 137
mkdir scales
for name in "${names[@]}"; do
  run scale "$name" --both --output "scales/$name.passage"
  status_is 0
  is_empty out
  is_empty err
  holds "$name keeps to 80 columns" test "$(widest "scales/$name.passage")" -le 80
done
run annotate scales/*.passage --format jsonl
status_is 0
is_empty err
is "$(jq -s '[.[].passages[]] | length' out)" 137
is "$(jq -s '[.[].passages[].hands[].events[] | select(any(.notes[]; .finger == null))] | length' out)" 0
"$FINGERTURN" scale 'Bb major' | "$FINGERTURN" annotate - >piped 2>err
is_empty err
has piped 'B-flat major scale, both hands, 1 octave'

refused() {
  run scale "${@:2}"
  status_is 2
  is_empty out
  is "$(head -n 1 err)" "fingerturn: $1"
}
cure='a name is a note and a kind, as in "B-flat major" or "C harmonic minor"; fingerturn scale --list lists them'
refused 'name a scale, as in "B-flat major"; fingerturn scale --list lists them'
refused 'there is no scale "Bb majr"; did you mean "B-flat major"?' 'Bb majr'
refused 'there is no scale "c shap major"; did you mean "C-sharp major"?' c shap major
refused 'there is no scale "G# major"; did you mean "A-flat major"?' 'G# major'
refused '--list lists all scales; leave the name or --list away' --list C
refused "there is no scale \"lydian\"; $cure" lydian
refused "there is no scale \"\"; $cure" ''
for name in Cmaj7 'c lydian' 'Csus'; do refused "there is no scale \"$name\"; $cure" "$name"; done
refused 'there is no scale "h minor"; the note called H in German is B here' h minor
refused $'there is no scale "a\uFFFD[31m"; '"$cure" $'a\x1B[31m'
refused "there is no scale \"$(printf 'b%.0s' {1..60})...\"; $cure" "$(printf 'b%.0s' {1..9000})"
refused 'B-flat major starts on B-flat, not on A#3' Bb major --from A#3
refused 'C major over 4 octaves would need D8 in the right hand, above C8, the highest key of the piano' \
  C major --octaves 4 --from C5
refused 'C0 is not on the piano, whose keys go from A0 to C8' C major --from C0
refused '--from: expected a pitch as in Bb2, found "H2"' C major --from H2
refused '--octaves: expected a number from 1 to 4, found "5"' C major --octaves 5
refused '--octaves: expected a number from 1 to 4, found "0"' C major --octaves 0
refused '--down excludes --both' C major --both --down
refused 'C.passage/x: cannot write: No such file or directory' C major --output C.passage/x
holds 'nothing is left behind' test ! -e C.passage

# Inversions, contrary motion, hands apart, double notes.
run scale 'C major arpeggio' --inversion 1 --hand right --octaves 2
is "$(cat out)" 'passage: C major arpeggio, first inversion, right hand, 2 octaves
# Fingers by common practice, no source: the thumb on the outermost note at
# its side, or else on the next white key.
meter: 6/8
1/8 E4:1 G4:2 C5:4 E5:1 G5:2 C6:4 | 1/2. E6:5 ||'
run scale C major --contrary --both
has out 'passage: C major scale, both hands in contrary motion, 1 octave, out and back'
has out 'LH: 1/8 C4:1 B3:2 A3:3 G3:1 F3:2 E3:3 D3:4 C3:5 |'
run scale C major --apart sixth
is "$(cat out)" 'passage: C major scale, both hands a sixth apart, 1 octave
# Fingers from memory after C.-L. Hanon, The Virtuoso Pianist (1873), no. 39.
# The left hand begins on the third; each of its notes has the finger that it
# has from the keynote.
meter: 4/4
RH: 1/8 C4:1 D4:2 E4:3 F4:1 G4:2 A4:3 B4:4 C5:5 ||
LH: 1/8 E3:3 F3:2 G3:1 A3:3 B3:2 C4:1 D4:4 E4:3 ||'
run scale Eb major --double octaves --hand left --down
has out '# Octaves have 1-5 on white keys and 1-4 on black ones (common practice, no'
has out '1/8 Eb3:4+Eb4:1 D3:5+D4:1 C3:5+C4:1 Bb2:4+Bb3:1 |'
run scale C chromatic --double thirds --hand right
has out '1/8 C4:1+Eb4:3 C#4:2+En4:4 D4:1+F4:3 D#4:2+F#4:4 |'
for form in '--contrary' '--apart tenth' '--double thirds' '--double octaves'; do
  # shellcheck disable=SC2086 # an option and its word
  "$FINGERTURN" scale 'A harmonic minor' --both $form | "$FINGERTURN" annotate - >piped 2>err
  is_empty err
  has piped 'A harmonic minor scale'
done
refused 'only arpeggios have inversions, not the C major scale' C major --inversion 1
refused 'C major arpeggio has inversions 1 to 2, not 3' C major arpeggio --inversion 3
refused '--inversion: expected a number from 1 to 3, found "4"' C major arpeggio --inversion 4
refused 'contrary motion takes both hands, not the left one alone' C major --contrary --hand left
refused 'a scale with the hands apart takes both hands, not the right one alone' \
  C major --apart third --hand right
refused 'hands in contrary motion stay in no thirds, sixths or tenths' \
  C major --contrary --apart third
refused 'hands in thirds, sixths or tenths play single notes, not double ones' \
  C major --apart third --double octaves
refused 'only scales go in thirds, not the C major arpeggio' C major arpeggio --double thirds
refused '--apart: expected sixth|tenth|third, found "fifth"' C major --apart fifth
refused '--double: expected octaves|sixths|thirds, found "tenths"' C major --double tenths

# Names as others write them, and two in one word.
for name in Cm 'A minor harmonic' 'B minor melodic' Es-Dur; do
  run scale "$name"
  status_is 0
  is_empty err
done
refused 'there is no scale "C7"; did you mean "C dominant seventh arpeggio"?' C7
refused 'there is no scale "C major, G major"; one at a time: "C major", then "G major"' 'C major, G major'
