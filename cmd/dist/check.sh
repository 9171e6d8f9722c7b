#!/bin/sh
# What make dist made, looked at as whoever gets it would: made again in another folder from
# nothing, put into clean systems and taken out again, each program run where it can be. It says
# what it could not do for want of a tool, and fails where something is not as it should be.
#
#	check.sh FOLDER    the folder that make dist wrote
#
# Debian: apt-get install mmdebstrap rpm qemu-user-static wine64 gcc-mingw-w64-x86-64 binutils python3
set -eu
dist=$1
repo=$(cd "$(dirname "$0")/../.." && pwd)
work=$(mktemp -d)
chmod 755 "$work"
trap 'rm -rf "$work"' EXIT
there() { command -v "$1" >/dev/null; }
die() { echo "dist-check: $*" >&2; exit 1; }
cannot() { echo "NOT CHECKED: $*"; }
job="plan --coat clear --gun hvlp --temp 75F --humidity 45 --supply 90psi"

echo "== the same sums in another folder, built from nothing"
(cd "$dist" && sha256sum --quiet -c SHA256SUMS) || die "make dist first"
version=$(basename "$dist"/*_linux_amd64.tar.gz _linux_amd64.tar.gz) version=${version#*_}
of=$(echo "$version" | sed -n 's/.*\.\([0-9a-f]\{12\}\)$/\1/p') # a commit, else a version's tag
git clone --quiet "$repo" "$work/another/place"
git -C "$work/another/place" checkout --quiet "${of:-v$version}"
(cd "$work/another/place" && BUILD_CACHE="$work/cache" go run ./cmd/dist "$work/again")
chmod -R u+w "$work/cache" 2>/dev/null && rm -rf "$work/cache"
diff "$dist/SHA256SUMS" "$work/again/SHA256SUMS" || die "two folders, two sums"

echo "== programs are static and run"
mkdir "$work/out"
for f in "$dist"/*.tar.gz; do tar -xzf "$f" -C "$work/out"; done
plan="$work/plan.txt"
run() { # run SYSTEM COMMAND...: the same plan as the first one that ran
	system=$1; shift
	HOME="$work/home" LANG=C.UTF-8 "$@" $job | tr -d '\r' >"$work/plan.$system" || die "$system: a plan failed"
	[ -e "$plan" ] || cp "$work/plan.$system" "$plan"
	cmp "$plan" "$work/plan.$system" || die "$system: another plan"
	echo "$system: the plan is the same"
}
run linux_amd64 "$work"/out/*_linux_amd64/boothset
grep -q WALL "$plan" || die "a plan says no wall pressure"
if there readelf; then
	for f in "$work"/out/*_linux_*/boothset "$work"/out/*_linux_*/boothset-serve; do
		if readelf -lW "$f" | grep -q INTERP; then die "$f is not static"; fi
	done
else
	cannot "the programs are static: no readelf"
fi
for pair in arm64:qemu-aarch64-static armv7:qemu-arm-static; do
	arch=${pair%:*} emulator=${pair#*:}
	if there "$emulator"; then
		run "linux_$arch" "$emulator" "$work/out"/*"_linux_$arch/boothset"
	else
		cannot "linux_$arch runs: no $emulator"
	fi
done
if there wine && there x86_64-w64-mingw32-gcc && there python3; then
	export WINEPREFIX="$work/wine" WINEDEBUG=-all
	HOME="$work/home" wineboot -i >/dev/null 2>&1
	# What Go draws random numbers from is in Windows since 8, in Wine since 9; Debian 12 has 8.
	cat >"$work/prng.c" <<-'END'
		#include <windows.h>
		BOOLEAN NTAPI SystemFunction036(PVOID, ULONG);
		__declspec(dllexport) BOOL WINAPI ProcessPrng(PBYTE p, SIZE_T n) { return SystemFunction036(p, (ULONG)n); }
	END
	dll="$WINEPREFIX/drive_c/windows/system32/bcryptprimitives.dll"
	[ -e "$dll" ] || x86_64-w64-mingw32-gcc -shared -o "$dll" "$work/prng.c" -ladvapi32
	python3 -m zipfile -e "$dist"/*_windows_amd64.zip "$work/out"
	run windows_amd64 wine "$work"/out/*_windows_amd64/boothset.exe
else
	cannot "windows_amd64 runs: no wine, no python3 to unpack it, or no x86_64-w64-mingw32-gcc for what an older wine lacks"
fi
cannot "macos_amd64 and macos_arm64 run: nothing runs them here"

# files ROOT lists what is in a system, without what its own package manager and manual keep.
files() {
	(cd "$1" && find . -mount ! -path './proc/*' ! -path './sys/*' ! -path './dev/*' \
		! -path './var/lib/dpkg/*' ! -path './var/lib/rpm/*' ! -path './usr/lib/sysimage/*' ! -path './var/cache/*' ! -path './var/log/*' | LC_ALL=C sort)
}

echo "== the .deb in a clean Debian"
deb=$(echo "$dist"/*_amd64.deb)
if there mmdebstrap && [ "$(id -u)" = 0 ]; then
	root="$work/debian"
	mmdebstrap --quiet --variant=essential --include=man-db,bash-completion bookworm "$root"
	files "$root" >"$work/before"
	cp "$deb" "$root/tmp/boothset.deb"
	in_root() { chroot "$root" env -i PATH=/usr/bin:/bin:/usr/sbin:/sbin HOME=/tmp LANG=C.UTF-8 "$@"; }
	in_root dpkg -i /tmp/boothset.deb
	rm "$root/tmp/boothset.deb"
	in_root dpkg -L boothset >"$work/owned"
	for f in /usr/bin/boothset /usr/bin/boothset-serve /usr/share/man/man1/boothset.1.gz /usr/share/man/es/man1/boothset.1.gz \
		/usr/share/bash-completion/completions/boothset /usr/share/zsh/vendor-completions/_boothset \
		/usr/share/fish/vendor_completions.d/boothset.fish /usr/share/doc/boothset/copyright /usr/share/boothset/demo/booths/two.toml; do
		grep -qx "$f" "$work/owned" || die "the .deb has no $f"
	done
	run debian in_root boothset
	in_root boothset version
	in_root boothset shop --shop /usr/share/boothset/demo | grep -q two || die "the demo shop does not open"
	in_root env COLUMNS=80 man -P cat boothset-plan | grep -q -- --humidity || die "the manual does not open"
	in_root env COLUMNS=80 LANG=es_ES.UTF-8 LC_ALL=C.UTF-8 man -L es -P cat boothset-plan | grep -q humedad || die "the Spanish manual does not open"
	in_root bash -c '. /usr/share/bash-completion/bash_completion; . /usr/share/bash-completion/completions/boothset; complete -p boothset' || die "bash does not complete it"
	in_root dpkg --purge boothset
	files "$root" >"$work/after"
	diff "$work/before" "$work/after" || die "removing the .deb leaves something"
	rm -rf "$root"
else
	cannot "the .deb in a clean Debian: no mmdebstrap, or not root"
fi

echo "== the .rpm"
rpm=$(echo "$dist"/*.x86_64.rpm)
if there rpm && [ "$(id -u)" = 0 ]; then
	rpm -K --nosignature "$rpm"
	root="$work/rpm"
	mkdir -p "$root"
	rpm --root "$root" --initdb
	rpm --root "$root" -i --nodeps --nosignature "$rpm"
	[ -z "$(rpm --root "$root" -V --nodeps boothset)" ] || die "rpm finds its files changed"
	for f in /usr/bin/boothset /usr/bin/boothset-serve /usr/share/man/man1/boothset.1.gz /usr/share/man/es/man1/boothset.1.gz \
		/usr/share/zsh/site-functions/_boothset /usr/share/doc/boothset/licences.txt /usr/share/boothset/demo/booths/two.toml; do
		rpm --root "$root" -qf "$f" >/dev/null || die "the .rpm has no $f"
	done
	run rpm "$root/usr/bin/boothset"
	man -P cat -l "$root/usr/share/man/man1/boothset-plan.1.gz" | grep -q -- --humidity || die "the manual does not open"
	rpm --root "$root" -e boothset
	if files "$root" | grep boothset; then die "removing the .rpm leaves something"; fi
else
	cannot "the .rpm: no rpm, or not root"
fi
echo "dist-check: all that was checked is as it should be"
