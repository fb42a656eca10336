#!/usr/bin/env bash
# finger --from: the fingers of an edited excerpt go back into the score, and nothing else does.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cp "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" tram.musicxml

# An excerpt that nobody has touched gives the score as it was.
"$FINGERTURN" excerpt tram.musicxml --bars 3-4 >part.passage
run finger tram.musicxml --from part.passage --format musicxml
status_is 0
is_empty err
same_files out tram.musicxml

# A finger where none was is put in without a word.
sed 's/C5 /C5:3 /' part.passage >added.passage
holds "a finger was added" test "$(diff part.passage added.passage | grep --count '^>')" -eq 1
run finger tram.musicxml --from added.passage --format musicxml -o added.musicxml
status_is 0
is_empty err
is "$(diff tram.musicxml added.musicxml | grep --count '^>')" 1
run excerpt added.musicxml --bars 3-4
grep -v '^#' out >again
grep -v '^#' added.passage | "$FINGERTURN" annotate --format passage - >expected
same_files again expected

# Another finger is a conflict, and nothing is written; --replace names it and puts it in.
sed 's/D5:2 C5/D5:4 C5/' part.passage >other.passage
run finger tram.musicxml --from other.passage --format musicxml -o other.musicxml
status_is 3
is "$(cat err)" 'fingerturn: bar 3, right hand, beat 2: 4 instead of 2 on D5
fingerturn: tram.musicxml has other fingers on 1 of the notes: --replace puts these in their place'
holds "nothing is written" test ! -e other.musicxml
run finger tram.musicxml --from other.passage --replace --format musicxml -o other.musicxml
status_is 0
is "$(cat err)" 'fingerturn: bar 3, right hand, beat 2: 4 instead of 2 on D5'
is "$(diff tram.musicxml other.musicxml | grep --count '^>')" 1

# Of some bars only their fingers; suggestions stay out.
run finger tram.musicxml --from other.passage --bars 4 --format musicxml
status_is 0
same_files out tram.musicxml
"$FINGERTURN" finger tram.musicxml --format passage >suggested.passage
run finger tram.musicxml --from suggested.passage --format musicxml
status_is 0
is "$(cat err)" 'fingerturn: 1 suggested fingers (?) stay out'
same_files out tram.musicxml

# Other notes are told with their place.
sed 's/A3:1 F2:5/A3:1 G2:5/' part.passage >wrong.passage
run finger tram.musicxml --from wrong.passage --format musicxml
status_is 3
is_empty out
is "$(cat err)" 'fingerturn: wrong.passage: not the notes of tram.musicxml: bar 3, left hand: G2 in the passage, F2 on beat 3 in the score; excerpt writes the notes of its bars'

# What makes no sense is refused.
run finger tram.musicxml --from part.passage
status_is 2
has err '--from makes one MusicXML score'
run finger tram.musicxml tram.musicxml --from part.passage --format musicxml
status_is 2
run finger part.passage --from part.passage --format musicxml
status_is 2
has err 'and this is a passage'
run finger tram.musicxml --replace --format musicxml
status_is 2
run finger tram.musicxml --from missing.passage --format musicxml
status_is 3
cp tram.musicxml kept.musicxml
run finger tram.musicxml --from other.passage --replace --format musicxml -o other.passage
status_is 2
run finger tram.musicxml --from other.passage --replace --format musicxml -o tram.musicxml
same_files tram.musicxml kept.musicxml

# The excerpt beside its score: its bars by themselves.
run compare tram.musicxml other.passage
status_is 0
has out 'bars 3 to 4'
has out '4   '
