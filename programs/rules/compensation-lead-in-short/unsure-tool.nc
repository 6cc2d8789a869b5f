%
O1 (the radius of tool 9 is not known)
G21 G90 G17 G94
G54
T9 M6 ; expect tool-unlisted warning: tool 9
G43 H9
S30000 M3
G0 X0. Y0. Z1.
G1 G41 D9 X0.1999 F100. ; not checked compensation-lead-in-short: the tool in the spindle is not known or not on the sheet
X1.
G40 X2.
G0 Z1.
M5
M30
%
