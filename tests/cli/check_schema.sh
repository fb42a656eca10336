#!/usr/bin/env bash
# The JSONL of check fits docs/check.schema.json, as the general validator jsonschema (Debian's
# python3-jsonschema) sees it, and spoiled lines do not.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

schema="$FINGERTURN_SOURCE_DIR/docs/check.schema.json"

# Every kind of line: with and without findings, hands, beats; what could not be read; all.
cat >all.passage <<'END'
meter: 6/8
RH: 1/8 C5:1 D D:3 E:4>1 F:2? G | r C5:1+D:1+G:5 C5:3+E:2 B4:4 , A#4:3 G:1 |
LH: 1/4. C3:5 D:5 | E:1 F |
passage: without values
C4 D:1 E F:5 F:5+G:5 F:5 r C4:1+D:4+C5:5
END
: >empty.passage
echo 'C4:9' >bad.passage
cat >score.musicxml <<'END'
<?xml version="1.0"?>
<score-partwise><part-list><score-part id="P"><part-name>Piano</part-name></score-part></part-list>
<part id="P"><measure number="0"><attributes><divisions>2</divisions></attributes>
<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration>
<notations><technical><fingering>7</fingering></technical></notations></note>
</measure></part></score-partwise>
END
mkdir valid
"$FINGERTURN" check --format jsonl all.passage empty.passage bad.passage missing.passage \
  score.musicxml "$FINGERTURN_SOURCE_DIR/demo" 2>err | split --lines=1 --additional-suffix=.json - valid/line.
"$FINGERTURN" check --format jsonl bad.passage 2>err | split --lines=1 --additional-suffix=.json - valid/bad.
holds "there are lines" test "$(find valid -name '*.json' | wc -l)" -ge 14
is "$(jq -s -c 'map(.findings // [] | .[]) | [map(.level), map(.hand), map(.beat == null)] | map(unique)' valid/line.*)" \
  '[["caution","info","strain"],["left","right"],[false,true]]'
is "$(not_valid valid/*)" ''

# Each line spoils a document of one kind; none of the results may fit.
cp valid/line.aa.json read.json
cp valid/line.ac.json failed.json
cp "$(find valid -name 'line.*' | sort | tail -n 1)" all.json
is "$(jq -c '[.source, (.findings | length > 0)]' read.json)" '["all.passage",true]'
is "$(jq -c '[.source, .error != null]' failed.json)" '["bad.passage",true]'
is "$(jq -c '[.source, .failed]' all.json)" '[null,2]'
cat >spoilers <<'END'
read del(.format)
read .format = "fingerturn-analysis"
read del(.version)
read .version = 2
read del(.source)
read .source = null
read del(.error)
read .error = "broken"
read .extra = 1
read del(.passages)
read .events = -1
read .events = 1.5
read del(.fingered)
read .preparatory = null
read .single = "1"
read del(.double)
read .level = "info"
read del(.undetermined)
read .crossings = null
read del(.watch)
read .watch.extra = 0
read del(.watch.strain)
read .watch.info = -1
read del(.told_by)
read .told_by = "page"
read del(.titles)
read .titles = [null]
read del(.findings)
read .findings = null
read .findings[0].code = "Missing Finger"
read .findings[0].level = "danger"
read .findings[0].passage = 0
read .findings[0].hand = "both"
read .findings[0].bar = -1
read .findings[0].beat = 0.5
read .findings[0].beat = "1"
read .findings[0].line = 0
read .findings[0].line = null
read .findings[0].column = 0
read .findings[0].message = ""
read .findings[0].extra = 1
read del(.findings[0].beat)
read del(.findings[0].passage)
failed .error = null
failed .error = ""
failed .source = null
failed .events = 0
failed del(.version)
all .source = "x"
all .error = "x"
all del(.read)
all .failed = -1
all del(.caution)
all .caution = ""
all .findings = []
all del(.watch)
all del(.crossings)
END
while read -r kind program; do spoil "$kind.json" "$program"; done <spoilers
none_spoiled_fits
