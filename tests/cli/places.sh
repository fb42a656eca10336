#!/usr/bin/env bash
# --places: the places that ask most, in each form.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

easy='1/4 C4:1 E:3 C:1 E:3 |'
row='1/4 C4:1 D:2 E:3 F:4 G:5 |'
echo "passage: Lantern Street
note: keep the wrist loose
RH: $easy $easy
note: with a light arm
$row $easy $easy $easy" >lantern.passage

for form in text html markdown; do
  run annotate --places --columns 120 --format "$form" lantern.passage
  status_is 0
  has out 'Shown is the place that asks most, with the bars around, by a sum of ours'
  has out 'Bars 2 to 4 for bar 3 with 3 points'
  has out '3 doubles in rows'
  has out 'bar 3: with a light arm'
  lacks out 'keep the wrist loose'
  lacks out 'bar 5'
done
for form in json jsonl; do
  run annotate --places --format "$form" lantern.passage
  status_is 0
  is "$(jq -c '.passages[0] | .places, ([.hands[0].events[].bar] | unique)' out | tr '\n' ' ')" \
    '[{"first_bar":2,"last_bar":4,"asking":[{"bar":3,"points":3,"doubles":3,"passings":0,"carries":0,"leaps":0,"findings":0,"quick_passings":0,"held":0,"small_swings":0,"kinds_differ":0}]}] [2,3,4] '
done
run annotate --format json lantern.passage
is "$(jq '.passages[0] | has("places")' out)" false

# Of some bars only their places, and nothing where nothing stands out.
run annotate --places --bars 4-6 lantern.passage
status_is 0
has out 'No bar stands out by what it asks'
lacks out 'forearm'
lacks out 'totals'

# What is not fingered is not known to ask anything.
run annotate --places lantern.passage
lacks out 'Fingers are missing'
echo '1/4 C4 r D:2 E:3' >unfingered.passage
run annotate --places --columns 120 unfingered.passage
has out 'Fingers are missing, and what asks most may be there: --suggest fills them in.'

# The notation written anew tells none.
run annotate --places --format passage lantern.passage
status_is 2
is_empty out
has err 'tells no places; --bars takes the bars of one'
