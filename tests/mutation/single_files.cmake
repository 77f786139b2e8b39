# The layers that get faults are compiled file by file, so that one fault costs one file.
cmake_language(DEFER CALL set_target_properties pantile_core pantile_codec pantile_drawing pantile_board
    PROPERTIES UNITY_BUILD OFF)
