# What tests/run and sample_library/run share: Debian's packages and the build. To be sourced.

build_packages=(g++ cmake ninja-build qt6-base-dev libsqlite3-dev zlib1g-dev
                libjpeg62-turbo-dev libgtest-dev libgmock-dev)
# qt6-image-formats-plugins reads WebP, libqt6svg6 SVG.
program_packages=(qt6-image-formats-plugins libqt6svg6 fonts-dejavu-core)
# lld links the sanitized programs, which are large, in half the time.
# gcc-avr, avr-libc and simavr compile and run the player for the 8-bit board.
# The completions are run in their shells, the manual page by groff, the window under xvfb. The entry, the description and
# the kinds of files that are installed for the desktop are read by its own programs, from desktop-file-utils on.
test_packages=(lld imagemagick python3 python3-pil poppler-utils minetest-data clang-format-14
               gcc-avr avr-libc simavr bash zsh fish groff-base xvfb xauth
               desktop-file-utils appstream shared-mime-info libglib2.0-bin locales tzdata)
coverage_packages=(gcovr)
# The sanitized build and the fuzz targets; llvm-14 finds the lines for what the sanitizers report.
clang_packages=(clang-14 libclang-rt-14-dev llvm-14)
# What tests/packages/run and tests/portability/run need.
package_packages=(dpkg-dev lintian)
portability_packages=(g++-s390x-linux-gnu g++-arm-linux-gnueabihf qemu-user)

# install_missing build|test|clang...: asks for root by sudo only if something is missing.
install_missing() {
    local wanted=() missing=() group package
    for group in "$@"; do
        local -n list="${group}_packages"
        wanted+=("${list[@]}")
    done
    wanted+=("${program_packages[@]}")
    for package in "${wanted[@]}"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
    done
    [[ ${#missing[@]} -eq 0 ]] && return
    echo "Installing: ${missing[*]}"
    local as_root=()
    [[ $(id -u) -eq 0 ]] || as_root=(sudo)
    "${as_root[@]}" apt-get update -qq
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}

# configure_and_build FOLDER [--target NAME...] [CMAKE-OPTION...]
configure_and_build() {
    local folder=$1 targets=()
    shift
    if [[ ${1:-} == --target ]]; then
        targets=(--target)
        shift
        while [[ $# -gt 0 && $1 != -* ]]; do
            targets+=("$1")
            shift
        done
    fi
    local launcher=()
    command -v ccache >/dev/null && launcher=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    # Many files in one take a quarter of the time; work by hand does without.
    local batches=(-DCMAKE_UNITY_BUILD=ON -DCMAKE_UNITY_BUILD_BATCH_SIZE=24)
    local log=$folder/build.log
    mkdir -p "$folder"
    {
        cmake -S . -B "$folder" -G Ninja "${batches[@]}" "${launcher[@]}" "$@" &&
            cmake --build "$folder" --parallel "$(nproc)" "${targets[@]}"
    } >"$log" 2>&1 || {
        grep -vE '^\[[0-9]+/[0-9]+\] [A-Z][a-z]+ing' "$log" | tail -n 60
        echo "The build failed; all of it is in $log"
        return 1
    }
}

check_format() {
    git rev-parse --is-inside-work-tree >/dev/null 2>&1 || return 0
    git ls-files '*.h' '*.cpp' | xargs clang-format-14 --dry-run -Werror
}
