# What the catalogue's scripts need to know about the machine. Sourced by deploy/start, deploy/catalogue, tests/run and
# tests/bench; the caller has set `root` to the project's folder.
# shellcheck shell=bash

say() { printf '%s\n' "$*" >&2; }
fail() { say "$*"; exit 1; }

# True on Debian and Ubuntu, whose packages the scripts can install.
has_apt() { command -v apt-get >/dev/null && command -v dpkg >/dev/null; }

# The newest PostgreSQL of version 15 or later whose server programs are here; the program itself looks in the same places.
has_postgres() {
    local folder version
    for folder in ${CATALOGUE_PG_BIN:-/usr/lib/postgresql/*/bin /usr/pgsql-*/bin ${PATH//:/ }}; do
        [[ -x $folder/postgres && -x $folder/initdb && -x $folder/pg_ctl ]] || continue
        version=$("$folder/postgres" --version 2>/dev/null | sed -nE 's/.*\(PostgreSQL\) ([0-9]+).*/\1/p')
        [[ ${version:-0} -ge 15 ]] && return 0
    done
    return 1
}

# Only with package files of ours is a package manager for scripts needed.
front_end_folders() {
    local folder
    for folder in "$root/src/Catalogue.Web" "$root/src/Catalogue.Site" "$root/src/Catalogue.Lab"; do
        [[ -f $folder/package.json ]] && printf '%s\n' "$folder"
    done
    return 0
}

# Installs Debian packages as root, saying so; otherwise prints the command and ends.
install_packages() {
    has_apt || fail "This machine lacks: $*. It has no apt-get; install the equivalents of these Debian packages and start again."
    if [[ $(id -u) -ne 0 ]]; then
        fail "This machine lacks: $*. Install them and start again:
  sudo apt-get update && sudo apt-get install --yes --no-install-recommends $*"
    fi
    say "Installing what is missing: $*"
    if [[ " $* " == *" postgresql "* ]]; then keep_main_cluster_away; fi
    export DEBIAN_FRONTEND=noninteractive
    apt-get update -qq >&2 || fail "apt-get update failed (see above)."
    apt-get install --yes -qq --no-install-recommends "$@" </dev/null >&2 || fail "apt-get could not install $* (see above)."
}

# Debian's package makes and starts a database of its own, which nothing here uses.
keep_main_cluster_away() {
    local file=/etc/postgresql-common/createcluster.conf
    [[ -e $file ]] && return 0
    say "Writing $file (create_main_cluster = false), so that the package starts no database of its own."
    mkdir -p "$(dirname "$file")"
    printf 'create_main_cluster = false\n' >"$file"
}

# The .NET SDK that global.json asks for; nothing here installs it.
need_dotnet() {
    # Both are usual places of an SDK installed by hand that a service's PATH lacks.
    command -v dotnet >/dev/null || PATH="$PATH:/usr/share/dotnet:/usr/lib/dotnet:${HOME:-/nonexistent}/.dotnet"
    command -v dotnet >/dev/null || fail "The .NET 10 SDK is missing: see https://dotnet.microsoft.com/download (Ubuntu: apt-get install dotnet-sdk-10.0)."
    # The SDK wants a home to keep its caches in; a service's account may have none.
    if [[ ! -w ${HOME:-/nonexistent} ]]; then
        export DOTNET_CLI_HOME="$root/artifacts/home" NUGET_PACKAGES="${NUGET_PACKAGES:-$root/artifacts/packages}"
        mkdir -p "$DOTNET_CLI_HOME"
    fi
    (cd "$root" && dotnet --version >/dev/null 2>&1) || fail "The .NET SDK found here ($(command -v dotnet)) is not version 10 or later, which global.json asks for."
    export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_WORKLOAD_UPDATE_NOTIFY_DISABLE=1
}

# Sees to programs by name (postgres, npm, chromium); all that is missing is installed, or asked for, at once.
need_programs() {
    local program packages=()
    for program in "$@"; do
        case $program in
            postgres)
                has_postgres && continue
                [[ -z ${CATALOGUE_PG_BIN:-} ]] || fail "CATALOGUE_PG_BIN names $CATALOGUE_PG_BIN, which holds no server programs of PostgreSQL 15 or later."
                packages+=(postgresql)
                ;;
            # Node.js from elsewhere brings its own npm, which Debian's would collide with.
            npm) command -v npm >/dev/null || packages+=(nodejs npm) ;;
            chromium) packages+=(chromium) ;;
        esac
    done
    [[ ${#packages[@]} -gt 0 ]] || return 0
    install_packages "${packages[@]}"
    if [[ " ${packages[*]} " == *" postgresql "* ]] && ! has_postgres; then
        fail "This system's PostgreSQL is older than version 15: add PostgreSQL's own package source (https://www.postgresql.org/download/), or give a server by ConnectionStrings__Catalogue."
    fi
}

# Packages of the pages' scripts, once and whenever their lock changed.
need_front_end_packages() {
    local folder folders stamp
    mapfile -t folders < <(front_end_folders)
    for folder in "${folders[@]}"; do
        stamp=$folder/node_modules/.catalogue-lock
        cmp -s "$folder/package-lock.json" "$stamp" && continue
        need_programs npm
        say "Fetching the packages of the pages in ${folder#"$root"/} ..."
        (cd "$folder" && npm ci --no-audit --no-fund --loglevel=error >&2)
        mkdir -p "${stamp%/*}"
        cp "$folder/package-lock.json" "$stamp"
    done
}

# One line that changes whenever the published program would.
source_stamp() {
    (
        cd "$root"
        dotnet --version
        # Time and size of each source file: reading them all would take longer than the rest of a start.
        find src global.json \( -name bin -o -name obj -o -name node_modules \) -prune -o -type f -printf '%p %s %T@\n' | LC_ALL=C sort
    ) | sha256sum
}

# Publishes the host into artifacts/site unless it is there and current. Two callers at once build once.
need_site() {
    mkdir -p "$root/artifacts"
    (
        flock 9
        publish_site
    ) 9>"$root/artifacts/build.lock"
}

publish_site() {
    local site=$root/artifacts/site stamp=$root/artifacts/site.stamp log=$root/artifacts/publish.log now
    now=$(source_stamp)
    if [[ -f $site/catalogue.dll && -f $stamp && $(<"$stamp") == "$now" ]]; then
        return 0
    fi
    need_front_end_packages
    say 'Building the catalogue ...'
    # Beside the one in use: a site that runs goes on from its own files.
    rm -rf "$site.new" "$site.old"
    # The build must leave nothing running that holds the lock (9) or outlives the site.
    if ! (cd "$root" && dotnet publish src/Catalogue.Web/Catalogue.Web.csproj --configuration Release --output "$site.new" \
        --nologo -v quiet -nodeReuse:false -p:UseSharedCompilation=false >"$log" 2>&1 9>&-); then
        cat "$log" >&2
        fail "The build failed; its output is above and in ${log#"$root"/}."
    fi
    if [[ -d $site ]]; then mv "$site" "$site.old"; fi
    mv "$site.new" "$site"
    rm -rf "$site.old"
    printf '%s\n' "$now" >"$stamp"
}
