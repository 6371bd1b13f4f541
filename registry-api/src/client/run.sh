#!/bin/bash
# Starts the jar with the demo on a free port, makes a client from its description, compiles it and lets it file a nomination.
# Needs `mvn package -DskipTests` before. Ends what it started.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
jar=$here/../../target/registry-api.jar
test -f "$jar" || { echo "first: mvn package -DskipTests" >&2; exit 1; }
port=${1:-18099}
folder=$(mktemp -d)
(cd "$folder" && exec java -jar "$jar" --server.port="$port" --registry.demo > register.log 2>&1) &
register=$!
trap 'kill $register; wait $register || true; rm -rf "$folder"' EXIT
for _ in $(seq 300); do
  curl -fs "http://127.0.0.1:$port/readyz" > /dev/null && break
  kill -0 $register || { tail -20 "$folder/register.log" >&2; exit 1; }
  sleep 1
done
mvn -B -f "$here/pom.xml" -Dregistry.address="http://127.0.0.1:$port" clean test
