;;; -*- lexical-binding: t -*-
;; Runs the lines of server/EDITORS.md for this editor (LAMELLA_LINES) on the files named (LAMELLA_FILES, by
;; colons) and prints, as one line of JSON, for each of them what its client, Eglot, was told: the findings as they
;; came, which of them is the first with fixes, their titles, the text with the first applied, and the text formatted.
(require 'package)
(package-initialize)
(require 'eglot)

(defvar published (make-hash-table :test 'equal))
(cl-defmethod eglot-handle-notification :before
  (_server (_method (eql textDocument/publishDiagnostics)) &key uri diagnostics &allow-other-keys)
  (puthash (file-name-nondirectory (eglot--uri-to-path uri)) diagnostics published))

(defun until (holds)
  (with-timeout (20 (error "The server did not answer"))
    (while (not (funcall holds)) (accept-process-output nil 0.02))))

(defun actions-at (diagnostic)
  (let ((region (eglot--range-region (plist-get diagnostic :range))))
    (append (eglot-code-actions (car region) (cdr region) "quickfix") nil)))

(defun told-of (file)
  (find-file file)
  (goto-char (point-min))
  ;; What `eglot-ensure' leaves to the next command: nobody gives one here.
  (run-hooks 'post-command-hook)
  (until (lambda () (and (eglot-current-server) (gethash file published))))
  (let* ((diagnostics (append (gethash file published) nil))
         (at 0)
         (actions (catch 'found
                    (dolist (each diagnostics)
                      (let ((found (actions-at each)))
                        (when found (throw 'found found)))
                      (setq at (1+ at)))))
         (was (buffer-string))
         (fixed (when actions
                  (eglot--apply-workspace-edit (plist-get (car actions) :edit))
                  (prog1 (buffer-string)
                    (erase-buffer)
                    (insert was))))
         (formatted (progn (eglot-format-buffer) (buffer-string))))
    (prog1 (list :published (vconcat diagnostics)
                 :at at
                 :fixes (vconcat (mapcar (lambda (action) (plist-get action :title)) actions))
                 :fixed (or fixed :null)
                 :formatted formatted)
      (set-buffer-modified-p nil))))

(setq eglot-confirm-server-initiated-edits nil
      inhibit-message t
      make-backup-files nil)
(load (getenv "LAMELLA_LINES"))
(princ (json-serialize
        (vconcat (mapcar #'told-of (split-string (getenv "LAMELLA_FILES") ":")))
        :null-object :null :false-object :json-false))
(terpri)
(eglot-shutdown-all)
