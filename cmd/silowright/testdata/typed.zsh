# typed.zsh DIR LINE: completes LINE as at a keyboard, by the functions in DIR,
# and prints what is offered, one word a line: what the completion hands to
# compadd is written down on its way.
if [[ -n $TYPED_DIR ]]; then # in the terminal, which takes this file first
  fpath=($TYPED_DIR $fpath)
  autoload -Uz compinit
  compinit -D -u
  compadd() {
    local -a offered=()
    if (( ! ${@[(I)-[OAD]]} )); then
      builtin compadd -O offered "$@"
      print -rl -- $offered >>$TYPED_OUT
    fi
    builtin compadd "$@"
  }
  finish() { exit }
  zle -N finish
  bindkey '^X' finish
  return
fi
zmodload zsh/zpty
export TYPED_DIR=$1 TYPED_OUT=$(mktemp)
zpty terminal zsh -f -i
zpty -w terminal "source ${(q)0:A}"
zpty -w -n terminal "$2"$'\t\x18'
while zpty -r terminal shown; do :; done
cat $TYPED_OUT
rm -f $TYPED_OUT
