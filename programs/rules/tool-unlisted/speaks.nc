%
O1 (tool 4 is not listed)
G21 G90 G17 G94
G54
T4 M6 ; expect tool-unlisted warning: tool 4 is not on the sheet && the tool under tools, with its number 4
G43 H4
G0 X0. Y0. Z1.
M30
%
