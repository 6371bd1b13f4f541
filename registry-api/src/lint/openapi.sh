#!/bin/sh
# Lints the description of the API, as a started service gives it, by the recommended rules of Redocly and Spectral.
#
#     registry-api/src/lint/openapi.sh [jar]
#
# Needs a JDK, curl, and Node.js with npm, which installs both linters into a temporary folder. Starts the service on an
# empty register there, and stops it. Ends with 1 where a rule is broken, be it only a warning.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
jar=$(realpath "${1:-$here/../../target/registry-api.jar}")
port=${PORT:-18479}
folder=$(mktemp -d)
service=
stop() {
	if [ -n "$service" ]; then
		kill "$service" 2> /dev/null || true
		wait "$service" 2> /dev/null || true
	fi
	rm -rf "$folder"
}
trap stop EXIT
trap 'exit 130' INT TERM

cd "$folder"
npm install --silent --no-audit --no-fund --ignore-scripts @redocly/cli @stoplight/spectral-cli
java -jar "$jar" --server.port="$port" --server.address=127.0.0.1 --registry.data-folder="$folder/data" \
	> service.log 2>&1 &
service=$!
tries=0
until curl -sf -o openapi.json "http://127.0.0.1:$port/openapi.json"; do
	tries=$((tries + 1))
	if [ "$tries" -gt 180 ] || ! kill -0 "$service" 2> /dev/null; then
		echo 'The service did not start:' >&2
		tail -15 service.log >&2
		exit 1
	fi
	sleep 1
done

broken=0
REDOCLY_TELEMETRY=off npx redocly lint --max-problems 1000 openapi.json > redocly.log 2>&1 || broken=1
cat redocly.log
if grep -q '^You have .* warning' redocly.log; then
	broken=1
fi
npx spectral lint --fail-severity=hint --ruleset "$here/spectral.yaml" openapi.json || broken=1
exit "$broken"
