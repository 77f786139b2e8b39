# Runs on what is about to be packed: the time of each file and folder is that of the release, not of the build.
cmake_minimum_required(VERSION 3.25)
if(DEFINED ENV{SOURCE_DATE_EPOCH})
    file(GLOB_RECURSE packed LIST_DIRECTORIES true ${CPACK_TEMPORARY_DIRECTORY}/*)
    foreach(path IN LISTS packed)
        execute_process(COMMAND touch --no-dereference --date=@$ENV{SOURCE_DATE_EPOCH} ${path}
            COMMAND_ERROR_IS_FATAL ANY)
    endforeach()
endif()
