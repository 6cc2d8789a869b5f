%
O1 (a count in front of the number, and neither program is there)
G21 G90
G54
G0 X0.
M98 P50100 ; expect subprogram-missing error: O50100 is called and not found && O0100.nc && O0100 where the control reads a count of 5 in front of it
M30
%
