#!/bin/sh
# Has what `tidecount export` writes read by programs that are no part of the tests: the HAPI FHIR validator (Java 17, Maven), and from
# PyPI pandas, frictionless, csvw, icalendar, python-dateutil and praat-parselmouth in the Python named by PYTHON (default python3).
set -eu
here=$(cd "$(dirname "$0")" && pwd)
python=${PYTHON:-python3}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cd "$here/../.."
TIDECOUNT_KEEP_EXPORTS="$folder" cargo test --quiet --locked --test promises export:: -- --test-threads=2
"$python" "$here/csv/check.py" "$folder"
"$python" "$here/calendar/check.py" "$folder/plan.ics"
"$here/fhir/validate.sh" "$folder/bundle.json" "$folder/transaction.json" "$folder/rehearsal.json" "$folder/every-kind.json"
echo "All exports were read and found valid."
