%
O1 (tool 9 is not on the sheet: its length is not known)
G21 G90 G17 G94
G54
T9 M6 ; expect tool-unlisted warning: tool 9
G43 H9
S30000 M3
G0 X-3. Y0. Z1. ; not checked outside-travel: the tool in the spindle is not known or not on the sheet
Z80.
M5
M30
%
