# What Debian wants compressed, in the folder that becomes the packages: the same bytes each time.
file(GLOB_RECURSE files ${CPACK_TEMPORARY_INSTALL_DIRECTORY}/*)
list(FILTER files INCLUDE REGEX "/share/(man/|doc/.*/changelog)")
foreach(file ${files})
  execute_process(COMMAND gzip --best --no-name ${file} COMMAND_ERROR_IS_FATAL ANY)
endforeach()
