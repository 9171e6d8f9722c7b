# Sourced by the scripts beside it: installs what they compare with, python3-fluids from
# Debian and psychrolib from npm, the latter into $work, a folder gone when the script ends.
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
if ! /usr/bin/python3 -c 'import fluids' 2>/dev/null; then
  apt-get update -q >/dev/null
  apt-get install -y -q python3-fluids >/dev/null
fi
npm install --silent --no-audit --no-fund --prefix "$work/npm" psychrolib@1.1.1 >/dev/null
