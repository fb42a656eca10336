#!/usr/bin/env bash
# The JSONL of find fits docs/find.schema.json, as the general validator jsonschema (Debian's
# python3-jsonschema) sees it, and spoiled lines do not.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

schema="$FINGERTURN_SOURCE_DIR/docs/find.schema.json"

# Every kind of line: with and without fingers, beats and lines; what could not be read; all.
printf 'meter: 4/4\nRH: 1/8 C5:1+E:3 D:4>1 F:1? G | r A5\nLH: 1/4 C3:5 , D:5\n' >all.passage
echo 'C4:9' >bad.passage
mkdir valid
"$FINGERTURN" find . all.passage bad.passage missing.passage "$FINGERTURN_SOURCE_DIR/demo" \
  --format jsonl 2>err | split --lines=1 --suffix-length=4 --additional-suffix=.json - valid/line.
holds "there are lines" test "$(find valid -name '*.json' | wc -l)" -ge 200
is "$(not_valid valid/*)" ''

cp valid/line.aaaa.json place.json
cp "$(grep --files-with-matches bad.passage valid/*)" failed.json
cp "$(find valid -name 'line.*' | sort | tail -n 1)" all.json
is "$(jq -c '[.source, (.events | length)]' place.json)" '["all.passage",1]'
is "$(jq -c '[.source, .error != null]' failed.json)" '["bad.passage",true]'
is "$(jq -c '[.source, .failed]' all.json)" '[null,2]'
cat >spoilers <<'END'
place del(.format)
place .format = "fingerturn-check"
place .version = 2
place .source = null
place .error = "x"
place .extra = 1
place .passage = 0
place .hand = "both"
place .bar = -1
place .beat = 0.5
place del(.beat)
place .last_bar = null
place .line = 0
place .column = 0
place .events = []
place .events[0].rotation = "triple"
place .events[0].side = "left"
place .events[0].play = "up"
place .events[0].crossing = "none"
place .events[0].extra = 1
place .events[0].notes = []
place .events[0].notes[0].pitch = "H4"
place .events[0].notes[0].finger = 6
place .events[0].notes[0].suggested = null
place .events[0].notes[0].changes_to = [0]
failed .error = null
failed .error = ""
failed .bar = 1
failed .source = null
all .source = "x"
all del(.read)
all .failed = -1
all .with_places = null
all del(.found)
all .events = 1.5
all .caution = ""
END
while read -r kind program; do spoil "$kind.json" "$program"; done <spoilers
none_spoiled_fits
