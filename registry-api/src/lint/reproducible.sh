#!/bin/bash
# Builds the jar twice, in two fresh clones of what is committed, and compares the bytes. Needs git, a JDK and Maven.
set -euo pipefail
here=$(git -C "$(dirname "$0")" rev-parse --show-toplevel)
place=$(mktemp -d)
trap 'rm -rf "$place"' EXIT
for clone in first second-under-another-name; do
	git clone -q "$here" "$place/$clone"
	(cd "$place/$clone" && mvn -B -q -DskipTests package)
done
cd "$place"
sha256sum */registry-api/target/registry-api.jar
if cmp -s first/registry-api/target/registry-api.jar second-under-another-name/registry-api/target/registry-api.jar; then
	echo "The two jars are the same, byte for byte."
else
	for jar in */registry-api/target/registry-api.jar; do
		unzip -v "$jar" | awk '{print $7, $8}' > "${jar%%/*}.txt"
	done
	diff first.txt second-under-another-name.txt | head -20
	echo "The two jars differ."
	exit 1
fi
