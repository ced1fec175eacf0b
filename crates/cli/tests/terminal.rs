//! The program as a person runs it: each folder in `cases` is one call with what it answers.
//!
//! What it is: `args` (one a line), `stdin` where there is one, and what is expected: `stdout`, `stderr`, `status`.
//! What it is not: a test of the sums. `UPDATE_EXPECT=1` writes the expected files anew; read the difference.

#![allow(clippy::expect_used, clippy::panic, reason = "a test")]

use std::{
    fs,
    io::{ErrorKind, Read, Write},
    path::{Path, PathBuf},
    process::{Command, Output, Stdio},
};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/cases")
}

fn run(args: &[&str], stdin: &[u8], within: &Path) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_weftbook"))
        .args(args)
        .current_dir(within)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program");
    let mut pipe = child.stdin.take().expect("a pipe");
    let stdin = stdin.to_vec();
    let writer = std::thread::spawn(move || match pipe.write_all(&stdin) {
        Ok(()) => {}
        // It may stop reading: at a limit, or before it starts.
        Err(problem) => assert_eq!(problem.kind(), ErrorKind::BrokenPipe),
    });
    let output = child.wait_with_output().expect("an answer");
    writer.join().expect("written");
    output
}

/// Status 2, nothing printed, one line of complaint that can be read.
fn refused(output: &Output, what: &str) -> String {
    let line = String::from_utf8(output.stderr.clone()).expect("text");
    assert_eq!(output.status.code(), Some(2), "{what}: {line}");
    assert!(output.stdout.is_empty(), "{what}");
    assert!(line.starts_with("weftbook: ") && line.ends_with('\n'), "{what}: {line}");
    assert_eq!(line.lines().count(), 1, "{what}: {line}");
    assert!(line.chars().count() < 400, "{what}: {} characters", line.chars().count());
    assert!(!line.trim_end().contains(char::is_control), "{what}: {line:?}");
    line
}

#[test]
fn each_case_answers_as_expected() {
    let mut paths: Vec<PathBuf> =
        fs::read_dir(folder()).expect("cases").map(|entry| entry.expect("a folder").path()).collect();
    paths.sort();
    assert!(paths.len() >= 30, "only {} cases", paths.len());
    let mut faults = Vec::new();
    for path in &paths {
        let args = fs::read_to_string(path.join("args")).expect("args");
        let args: Vec<&str> = args.lines().collect();
        let stdin = fs::read(path.join("stdin")).unwrap_or_default();
        let output = run(&args, &stdin, path);
        let status = format!("{}\n", output.status.code().expect("an exit status"));
        if status == "2\n" {
            refused(&output, &path.display().to_string());
        }
        for (name, found) in [("stdout", &output.stdout), ("stderr", &output.stderr), ("status", &status.into_bytes())]
        {
            let expected = path.join(name);
            if std::env::var_os("UPDATE_EXPECT").is_some() {
                fs::write(&expected, found).expect("written");
            } else if fs::read(&expected).unwrap_or_default() != *found {
                faults.push(format!("{}:\n{}", expected.display(), String::from_utf8_lossy(found)));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Inputs no file here should have to hold.
#[test]
fn hostile_input_is_refused_in_a_line() {
    let deep = |depth: usize| "[".repeat(depth).into_bytes();
    let case = |packs: &str, pieces: &str| format!(r#"{{"packs":{packs},"pieces":{pieces},"cut_loss_mm":0}}"#);
    let pack = r#"[{"name":"A","length_mm":1000,"pieces":1,"price":1,"owned":0}]"#;
    let many = format!("[{}]", vec![r#"{"length_mm":1,"count":1}"#; 60_000].join(","));
    let long_name = format!(r#"[{{"{}":1}}]"#, "n".repeat(100_000));
    let inputs: Vec<(&str, Vec<u8>)> = vec![
        ("nothing", Vec::new()),
        ("nested deep", deep(1_000_000)),
        ("an object nested deep", "{\"a\":".repeat(200_000).into_bytes()),
        ("NUL", b"\0\0\0\0".to_vec()),
        ("NUL inside", b"{\"packs\0\":[]}".to_vec()),
        ("no UTF-8", b"{\"packs\":\"\xff\xfe\"}".to_vec()),
        ("a lone surrogate", br#"{"packs":"\ud800"}"#.to_vec()),
        ("a huge number", case(pack, r#"[{"length_mm":1e400,"count":1}]"#).into_bytes()),
        ("a long number", case(pack, &format!(r#"[{{"length_mm":{},"count":1}}]"#, "9".repeat(100_000))).into_bytes()),
        ("a hundred million pieces", case(pack, r#"[{"length_mm":1,"count":100000000}]"#).into_bytes()),
        ("beyond 64 bits", case(pack, r#"[{"length_mm":1,"count":18446744073709551616}]"#).into_bytes()),
        ("too many pieces", case(pack, &many).into_bytes()),
        ("a long name", case(&long_name, "[]").into_bytes()),
        ("a name that steers", case(r#"[{"\u001b[2J\n":1}]"#, "[]").into_bytes()),
        ("longer than any file", vec![b' '; 80 * 1024 * 1024]),
    ];
    for (what, input) in inputs {
        for command in ["cut", "plan", "check"] {
            refused(&run(&[command, "-", "--json"], &input, &folder()), &format!("{command}, {what}"));
        }
    }
}

#[test]
fn a_reader_who_goes_away_is_no_trouble() {
    let demo = folder().join("../../../../demo-data/copper-bob.wig.json");
    let mut child = Command::new(env!("CARGO_BIN_EXE_weftbook"))
        .args(["plan", "--today", "2026-11-25"])
        .arg(&demo)
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program");
    drop(child.stdout.take());
    let mut complaint = String::new();
    child.stderr.take().expect("a pipe").read_to_string(&mut complaint).expect("text");
    let status = child.wait().expect("an end");
    assert_eq!((status.code(), complaint.as_str()), (Some(0), ""));
}

#[test]
fn without_today_the_clock_is_asked() {
    let demo = folder().join("../../../../demo-data/copper-bob.wig.json");
    let output = run(&["plan", "--json", &demo.to_string_lossy()], b"", &folder());
    assert_eq!(output.status.code(), Some(0));
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert!(answer["today"].as_str().is_some_and(|day| day > "2026-01-01" && day.len() == 10), "{answer}");
}
