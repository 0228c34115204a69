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
set "options=-Xlog:cds=off -Xlog:cds+dynamic=off -XX:TieredStopAtLevel=1 -XX:+UseSerialGC"
set "keep=-Xshare:auto"
set "archive=-Xshare:auto"
rem From Java 19 on, Java keeps an archive of the program's classes by itself; 17 and 18 do not know how.
"%bin%java" -XX:+AutoCreateSharedArchive -XX:SharedArchiveFile=none -Xshare:off -version >nul 2>nul
if errorlevel 1 goto without
if not defined LOCALAPPDATA goto start
if not exist "%LOCALAPPDATA%\fourfold\cache" mkdir "%LOCALAPPDATA%\fourfold\cache" >nul 2>nul
if not exist "%LOCALAPPDATA%\fourfold\cache" goto start
set "keep=-XX:+AutoCreateSharedArchive"
set "archive=-XX:SharedArchiveFile=%LOCALAPPDATA%\fourfold\cache\fourfold.jsa"
goto start
:without
rem This part of Java came with 17.
"%bin%java" --add-modules jdk.random -version >nul 2>nul
if errorlevel 1 goto older
:start
if "%~1"=="" goto window
"%bin%java" %keep% "%archive%" %options% -jar "%here%program\fourfold.jar" %*
exit /b %errorlevel%
:window
start "" "%bin%javaw" %keep% "%archive%" %options% -jar "%here%program\fourfold.jar"
exit /b 0
:none
echo fourfold: Java 17 or newer is needed and none was found. Install it, or name its folder in JAVA_HOME. 1>&2
if "%~1"=="" pause
exit /b 1
:older
echo fourfold: Java 17 or newer is needed; the one that was found is older. 1>&2
if "%~1"=="" pause
exit /b 1
