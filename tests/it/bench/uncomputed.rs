//! What the model cannot compute is an error and not a frozen dial: the attempt stops with everything kept, the exit
//! code is 2, the marker sets such a car aside, and the checker of packs keeps such numbers out.
