%
O1 (the offset of another tool)
G21 G90 G17 G94
G54
T3 M6
G0 X0. Y0.
G43 H4 Z1. ; expect length-offset-mismatch error: H4 with tool 3, expected H3 && H3 && a tool's offset has its own number unless tools.3.length_offset says otherwise
M30
%
