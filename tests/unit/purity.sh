#!/bin/sh
# The handlers decide from what they are given and nothing else. Checked on the library itself:
# what it calls is on a short list, it keeps no state, and no source reaches out of its folder.
#
# usage: purity.sh LIBRARY SOURCE_ROOT
set -eu

library=$1
root=$2
failed=0

# Text, memory and rounding of the C library; talloc; the arithmetic of Unicode; reading the kb
# (never loading it). No clock, locale, file, environment, random, SQL, curl or event.
allowed='^(
strlen|strnlen|strcmp|strncmp|strchr|strrchr|strspn|strstr|strcspn|memcpy|memset|memcmp|memmove|qsort|ceil|floor|
__assert_fail|__stack_chk_fail|_GLOBAL_OFFSET_TABLE_|
_?talloc_[a-z_0-9]+|memory_[a-z_]+|utf8proc_[a-z_]+|
kb_(topic|lean|trust|repaired|search_topics|questions|find_signs|is_foreign|is_courtesy|matter|tells_language|is_ordinary|sign|equipment|equipment_all)|equipment_(run_time|gauge_band|needs_wall)|
mode_name|mode_named|placeholder_entry|placeholder_named|words_tell_language|words_language|words_read|reaction_[a-z_]+|
cut_[a-z_]+|slip_between|sound_of|spelling_is_letters
)$'
allowed=$(printf '%s' "$allowed" | tr -d '\n')

undefined=$(nm -u -P "$library" | awk 'NF >= 2 && $2 == "U" {print $1}' | sort -u)
defined=$(nm --defined-only -P "$library" | awk 'NF >= 2 {print $1}' | sort -u)
if [ -z "$undefined" ] || [ -z "$defined" ]; then
    echo "nm reads nothing from $library"
    exit 1
fi
for name in $undefined; do
    printf '%s\n' "$defined" | grep -qxF -- "$name" && continue
    if ! printf '%s\n' "$name" | grep -Eq "$allowed"; then
        echo "the handlers call $name, which is not on the list of tests/unit/purity.sh"
        failed=1
    fi
done

# .data.rel.ro, where constant tables of pointers live, is fine.
state=$(size -A "$library" | awk '$1 ~ /^\.(data|bss|tdata|tbss)(\.|$)/ && $1 !~ /^\.data\.rel\.ro/ &&
                                  $2 > 0 {print $1 " " $2}')
if [ -n "$state" ]; then
    echo "the handlers keep state: $state"
    failed=1
fi

reaching=$(grep -rnE '^[[:space:]]*#[[:space:]]*include[[:space:]]*["<]\.\./' "$root/kb" \
    "$root/handlers" "$root/daemon" "$root/tests" --include='*.[ch]' || true)
if [ -n "$reaching" ]; then
    echo "includes are written from a library's own folder, never with ../:"
    echo "$reaching"
    failed=1
fi
exit $failed
