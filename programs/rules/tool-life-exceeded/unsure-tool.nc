%
O1 (a tool that is not on the sheet cuts)
G21 G90 G17 G94
G54
T7 M6 ; expect tool-unlisted warning: tool 7 is not on the sheet
G43 H7
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30. ; not checked tool-life-exceeded: tools.7 is not on the sheet
X1. F100. ; not checked tool-life-exceeded: the tool in the spindle is not known or not on the sheet
G0 Z1.
M5
M30
%
