#!/bin/sh
# For a double-click on macOS and Linux: makes the office folder "Paperbark office" in your home folder, and shows it.
here=$(CDPATH='' cd -P -- "$(dirname -- "$0")" && pwd -P) || exit 22
office="$HOME/Paperbark office"
"$here/paperbark" setup "$office"
ended=$?
if [ "$ended" = 0 ]; then
    open "$office" 2>/dev/null || xdg-open "$office" 2>/dev/null || echo "Open the folder $office"
fi
printf 'Press Enter to close this window. '
read -r _
exit "$ended"
