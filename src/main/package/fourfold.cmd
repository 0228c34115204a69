@echo off
rem SPDX-License-Identifier: Apache-2.0
rem Starts Fourfold with the Java that is installed: in a window of its own, or, with words after it, here.
setlocal
set "here=%~dp0"
set "bin="
if exist "%here%runtime\bin\java.exe" set "bin=%here%runtime\bin\"
if not defined bin if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "bin=%JAVA_HOME%\bin\"
if defined bin goto found
where java >nul 2>nul
if errorlevel 1 goto none
:found
rem From Java 19 on, Java keeps an archive of the program's classes by itself; Java 17 passes over what it does not know.
set "share=-Xshare:auto"
if not defined LOCALAPPDATA goto start
if not exist "%LOCALAPPDATA%\fourfold\cache" mkdir "%LOCALAPPDATA%\fourfold\cache" >nul 2>nul
if not exist "%LOCALAPPDATA%\fourfold\cache" goto start
set "share=-XX:+AutoCreateSharedArchive -XX:SharedArchiveFile="%LOCALAPPDATA%\fourfold\cache\fourfold.jsa""
:start
set "options=-XX:+IgnoreUnrecognizedVMOptions %share% -Xlog:cds=off -Xlog:cds+dynamic=off -XX:TieredStopAtLevel=1 -XX:+UseSerialGC"
if "%~1"=="" goto window
"%bin%java" %options% -jar "%here%program\fourfold.jar" %*
exit /b %errorlevel%
:window
start "" "%bin%javaw" %options% -jar "%here%program\fourfold.jar"
exit /b 0
:none
echo fourfold: Java 17 or newer is needed and none was found. Install it, or name its folder in JAVA_HOME. 1>&2
pause
exit /b 1
