%
O1 (the ends of the range, and a wild speed while the spindle stands)
G21 G90 G17 G94
G54
S60000 M3
S4000
M5
S99999
M30
%
