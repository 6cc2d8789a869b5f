%
O1 (text output changes nothing, and what no call reaches is not carried out)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
; expect below macro-unread warning: text output && nothing that was known before it became unknown && no move behind it is left unchecked for it
POPEN
G0 X1.
M30
O200
; expect below macro-unread warning: a loop && no call reaches it
WHILE [#1 LT 3] DO1
M99
%
