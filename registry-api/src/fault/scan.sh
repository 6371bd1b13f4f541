#!/bin/sh
# Scans a running demo with two scanners from Debian: wapiti over the pages, as a visitor and signed in as each role, and sqlmap on
# the parameters that search and list. Only ever against this machine.
#
#   java -jar registry-api.jar --registry.demo --registry.limits.network-per-second=0 --registry.limits.account-per-second=0
#   registry-api/src/fault/scan.sh [port, default 8080] [folder for the reports, default ./scan] [roles, default all]
#
# The modules that ask a server elsewhere (ssrf, xxe, log4shell) are left out. Needs wapiti, sqlmap, curl and Python 3. Ends with 1 if a scanner found anything.
set -eu
port=${1:-8080}; out=${2:-scan}; site=http://127.0.0.1:$port; api=$site/api/v1
mkdir -p "$out"
roles=${3:-visitor volunteer verifier coordinator other-coordinator admin}
found=0

session() { # the cookie of a session of the demo account $1
  curl -sf -D - -o /dev/null -H 'Content-Type: application/json' \
    -d "{\"email\": \"$1@demo.example\", \"password\": \"big trees in the demo county\"}" "$api/session" |
    tr -d '\r' | sed -n 's/^[Ss]et-[Cc]ookie: \([^;]*\);.*/\1/p' | paste -sd ';' -
}

for who in $roles; do
  cookie=''
  [ $who = visitor ] || cookie=$(session $who)
  wapiti -u "$site/" -s "$api/counties" -s "$api/trees" -s "$api/species?query=oak" -s "$site/measure" --scope domain \
    -m backup,blindsql,cookieflags,crlf,csp,exec,file,htaccess,http_headers,methods,permanentxss,redirect,shellshock,sql,xss --max-scan-time 240 --max-attack-time 60 \
    --max-links-per-page 40 --max-files-per-dir 60 -d 4 --flush-session --no-bugreport -f json -o "$out/wapiti-$who.json" \
    ${cookie:+-H "Cookie: $cookie"} -v 0 > "$out/wapiti-$who.log" 2>&1 || true
  python3 - "$out/wapiti-$who.json" $who <<'P' || found=1
import json, sys
# Not to be had over plain http, or out of use: X-XSS-Protection is sent as 0.
PLAIN = ('Strict-Transport-Security is not set', 'Secure flag is not set in the cookie', 'X-XSS-Protection is not set')
report = json.load(open(sys.argv[1]))
found = {kind: [one for one in all_found if not one['info'].startswith(PLAIN)]
         for kind, all_found in report['vulnerabilities'].items()}
serious = {kind: all_found for kind, all_found in found.items() if all_found}
crashes = {kind: found for kind, found in report['anomalies'].items() if found}
print(f"wapiti as {sys.argv[2]}: {len(report.get('classifications', {}))} kinds looked for, found {sum(map(len, serious.values()))}, "
      f"anomalies {sum(map(len, crashes.values()))}")
for kind, all_found in {**serious, **crashes}.items():
    for one in all_found[:5]:
        print('   ', kind, one['method'], one['path'], one['info'])
sys.exit(1 if serious or crashes else 0)
P
done

token=$(curl -sf -u 'coordinator@demo.example:big trees in the demo county' -H 'Content-Type: application/json' \
  -d '{"name": "scan", "expiresOn": "2035-01-01"}' "$api/tokens" | sed 's/.*"token":"\([^"]*\)".*/\1/')
for address in "species?query=oak&county=larkmere" "trees?county=larkmere&species=quercus-alba&query=oak" "trees?tag=LM-0001" \
  "species/quercus-alba/standing?counties=larkmere" "counties/larkmere/standings?asOf=2024-01-01" \
  "nominations?county=larkmere&status=submitted" "people?county=larkmere" "visits?county=larkmere" \
  "counties/larkmere/due?before=2027-01-01" "counties/larkmere/condition-reports?status=reported"; do
  name=$(echo "$address" | tr -c 'a-z\n' '-')
  sqlmap -u "$api/$address" -H "Authorization: Bearer $token" --batch --level 3 --risk 2 --dbms postgresql --technique BEUST --threads 4 \
    --time-sec 2 --flush-session --output-dir "$out/sqlmap" > "$out/sqlmap-$name.log" 2>&1 || true
  if grep -q 'is vulnerable\|identified the following injection' "$out/sqlmap-$name.log"; then
    echo "sqlmap found something at $address: see $out/sqlmap-$name.log"; found=1
  else
    echo "sqlmap: nothing at $address ($(grep -c 'testing ' "$out/sqlmap-$name.log") tests)"
  fi
done
exit $found
