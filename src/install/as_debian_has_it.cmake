# What Debian wants otherwise, in the folder that becomes the packages: compressed, the same bytes
# each time, and for zsh where its own look.
file(GLOB_RECURSE files ${CPACK_TEMPORARY_INSTALL_DIRECTORY}/*)
foreach(file ${files})
  if(file MATCHES "/share/(man/|doc/.*/changelog)")
    execute_process(COMMAND gzip --best --no-name ${file} COMMAND_ERROR_IS_FATAL ANY)
  elseif(file MATCHES "/share/zsh/site-functions/")
    cmake_path(GET file PARENT_PATH folder)
    cmake_path(GET folder PARENT_PATH zsh)
    file(RENAME ${folder} ${zsh}/vendor-completions)
  endif()
endforeach()
