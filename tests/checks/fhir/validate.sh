#!/bin/sh
# Validates FHIR files with the HAPI validator and the official R4 definitions; needs Java 17, Maven and, the first time, the network.
# ./validate.sh FILE...    Ends with 1 where there is an error; warnings are shown.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
classpath=${TMPDIR:-/tmp}/tidecount-fhir-check.classpath
[ -s "$classpath" ] || mvn -q -B -f "$here/pom.xml" dependency:build-classpath -Dmdep.outputFile="$classpath" >&2
exec java -Xmx3g -cp "$(cat "$classpath")" "$here/Validate.java" "$@"
